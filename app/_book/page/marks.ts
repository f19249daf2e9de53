/** Inks of the printed sheets. In grey each still tells: what differs by ink differs by shape, pattern or word as well. */
export const inks = {
  ink: '#000000', quiet: '#3d3d3d', line: '#8f8f8f', hair: '#bdbdbd', sunk: '#efefef', paper: '#ffffff',
  water: '#12497a', waterSoft: '#dfeaf3', building: '#c9c9c9', casing: '#6f6f6f',
  danger: '#8c1a13', dangerSoft: '#fbe9e6', amberSoft: '#faf0dc',
} as const
export type Ink = keyof typeof inks

export type Weight = 'regular' | 'bold'

/** A line of text: x and y where it begins on its base line, in points, y downwards. */
export type TextMark = {
  readonly kind: 'text'; readonly x: number; readonly y: number; readonly text: string; readonly size: number; readonly weight: Weight; readonly ink: Ink
  readonly across: number
  /** Turned about its beginning, in radians, clockwise. */
  readonly angle?: number
}

/** An outline in the words of SVG paths, in points. */
export type ShapeMark = {
  readonly kind: 'shape'; readonly path: string
  readonly fill?: Ink; readonly stroke?: Ink; readonly width?: number; readonly dash?: readonly number[]; readonly isRound?: boolean
  /** Of the filling. */
  readonly opacity?: number
  /** Moved and scaled, for symbols. */
  readonly at?: { readonly x: number; readonly y: number; readonly scale: number }
}

/** A place to press, that leads to a sheet. */
export type LinkMark = { readonly kind: 'link'; readonly left: number; readonly top: number; readonly across: number; readonly down: number; readonly to: string }

export type Mark = TextMark | ShapeMark | LinkMark

/** One page as it will be printed. */
export type PageMarks = { readonly across: number; readonly down: number; readonly marks: readonly Mark[] }
