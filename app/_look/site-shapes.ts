/** Kinds of places on the map, each with a shape of its own: told apart in grey by outline, letter and filling. */
export const siteKinds = ['source', 'draftSite', 'fillSite', 'dumpSite', 'fireGround', 'station', 'hazard', 'roadNote', 'hosePoint', 'pumper', 'tender'] as const
export type SiteKind = (typeof siteKinds)[number]

export type SiteShape = {
  /** Outline in a square of 24 by 24, for SVG and `Path2D` alike. */
  readonly path: string
  readonly letter: string
  /** Where the letter's middle stands. */
  readonly letterX: number
  readonly letterY: number
  /** Tokens of colour: `solid` is filled where water lies, or people stand; `open` where water passes, or a thing is only noted. */
  readonly fill: string
  readonly stroke: string
  readonly ink: string
}

const waterSolid = { fill: 'water', stroke: 'water', ink: 'on-water' } as const
const waterOpen = { fill: 'sheet', stroke: 'water', ink: 'water' } as const
const inkSolid = { fill: 'ink', stroke: 'ink', ink: 'sheet' } as const
const inkOpen = { fill: 'sheet', stroke: 'ink', ink: 'ink' } as const

/** A tender's outline, wider by so much for what is written in it. */
export function pillOf(wider: number): string {
  return `M7 6H${17 + wider}A6 6 0 0 1 ${17 + wider} 18H7A6 6 0 0 1 7 6Z`
}

/** The symbols: disc, bowl, square, tub, peak, house, diamond, hexagon, ring, truck and drum. */
export const siteShapes: Readonly<Record<SiteKind, SiteShape>> = {
  source: { path: 'M12 2.5A9.5 9.5 0 1 1 12 21.5A9.5 9.5 0 1 1 12 2.5Z', letter: 'W', letterX: 12, letterY: 12, ...waterSolid },
  draftSite: { path: 'M2 6H22V9A10 11.5 0 0 1 2 9Z', letter: 'D', letterX: 12, letterY: 12, ...waterSolid },
  fillSite: { path: 'M3.5 3.5H20.5V20.5H3.5Z', letter: 'F', letterX: 12, letterY: 12, ...waterOpen },
  dumpSite: { path: 'M1.5 5H22.5L18.5 20H5.5Z', letter: 'U', letterX: 12, letterY: 12, ...waterOpen },
  fireGround: { path: 'M12 1.5L23 21.5H1Z', letter: 'G', letterX: 12, letterY: 15.2, ...inkSolid },
  station: { path: 'M12 2L21.5 9.5V21H2.5V9.5Z', letter: 'S', letterX: 12, letterY: 13.5, ...inkSolid },
  hazard: { path: 'M12 1L23 12L12 23L1 12Z', letter: 'H', letterX: 12, letterY: 12, ...inkOpen },
  hosePoint: { path: 'M12 4.5A7.5 7.5 0 1 1 12 19.5A7.5 7.5 0 1 1 12 4.5Z', letter: 'L', letterX: 12, letterY: 12, ...waterOpen },
  pumper: { path: 'M2 6H16L22 11V18.5H2Z', letter: 'P', letterX: 11, letterY: 12.3, ...inkSolid },
  tender: { path: pillOf(0), letter: 'T', letterX: 12, letterY: 12, ...inkOpen },
  roadNote: { path: 'M7 3H17L22.5 12L17 21H7L1.5 12Z', letter: 'R', letterX: 12, letterY: 12, fill: 'amber-solid', stroke: 'ink', ink: 'on-amber' },
}
