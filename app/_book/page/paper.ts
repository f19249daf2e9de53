/** Papers the sheets are made for, upright, in points of 1/72 inch: ISO 216 A4 (210 by 297 mm), and Letter (8.5 by 11 in). */
export const papers = { a4: { across: (210 / 25.4) * 72, down: (297 / 25.4) * 72 }, letter: { across: 8.5 * 72, down: 11 * 72 } } as const
export type Paper = keyof typeof papers

export const isPaper = (text: string | null | undefined): text is Paper => text === 'a4' || text === 'letter'

/** Free at the edges: more than printers leave unprinted, and room to punch on the left. */
export const MARGIN = { left: 45, right: 36, top: 34, bottom: 30 } as const
/** Of the lines at the foot of every page. */
export const FOOT_HEIGHT = 36
