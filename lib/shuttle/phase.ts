/** Where a tender is in its round. */
export const PHASE = {
  coming: 0,
  waitsToDump: 1,
  takesPosition: 2,
  dumps: 3,
  clearsPosition: 4,
  drivesToFill: 5,
  waitsToFill: 6,
  takesBay: 7,
  fills: 8,
  clearsBay: 9,
  drivesToDump: 10,
  gone: 11,
  waitsInBay: 12,
  waitsAtRoad: 13,
  rests: 14,
} as const

/** Names of the phases, by number. */
export const phaseNames = [
  'coming', 'waits-to-dump', 'takes-position', 'dumps', 'clears-position', 'drives-to-fill',
  'waits-to-fill', 'takes-bay', 'fills', 'clears-bay', 'drives-to-dump', 'gone',
  'waits-in-bay', 'waits-at-road', 'rests',
] as const
export type PhaseName = (typeof phaseNames)[number]

/** What the pumper at a dump site is doing. */
export const PUMPER = {
  setsUp: 0,
  waitsForSupply: 1,
  draws: 2,
  lost: 3,
  reprimes: 4,
} as const

/** What the first engine at the fire is doing. */
export const ENGINE = { coming: 0, there: 1, empty: 2 } as const
