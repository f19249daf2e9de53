import type { ShuttleSpec } from '../../shuttle'

export type StopKind = 'fillPumper' | 'dumpPumper' | 'layPumper' | 'tender' | 'fillBay' | 'dumpPosition' | 'road'

/** One part of a plan that stops working in the middle of the night, and the shuttle without it. */
export type Stop = {
  readonly id: string
  readonly kind: StopKind
  /** What stops, then where. */
  readonly subjectIds: readonly string[]
  readonly values: Readonly<Record<string, number | string>>
  /** The shuttle from the moment it stops, by which a run goes on: all ids stay, what is cut off gets nothing. */
  readonly onward: ShuttleSpec
  /** The shuttle had it never been there, for the flow that can be held afterwards; undefined: nothing can. */
  readonly after: ShuttleSpec | undefined
  /** The pumper at a dump site that stops takes the fire ground's water with it at that moment. */
  readonly isAtOnce: boolean
  /** Part of the dump sites' pumping that is left. */
  readonly pump_gpm: number
}
