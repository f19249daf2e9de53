/** Middle of a mark on the screen, and its size, in px. */
export type MarkSpot = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** Marks nearer to each other than this touch. */
const APART_PX = 2
/** Rings of places that are tried round where a mark belongs; further off it would not be taken for the same place. */
const RINGS = 5

/**
 * How far marks are moved so that each can be read: those that stand at one place are lined up round it, above it first.
 * Who has room stays where it is.
 *
 * @param marks in an order that does not change, so that who stands longer does not jump
 * @param fixed symbols that are not to be covered
 */
export function spreadMarks(marks: readonly MarkSpot[], fixed: readonly MarkSpot[]): { x: number; y: number }[] {
  const taken: MarkSpot[] = [...fixed]
  return marks.map((mark) => {
    const shift = placesRound(mark).find(({ x, y }) => !taken.some((other) => meets({ ...mark, x: mark.x + x, y: mark.y + y }, other))) ?? { x: 0, y: 0 }
    taken.push({ ...mark, x: mark.x + shift.x, y: mark.y + shift.y })
    return shift
  })
}

function placesRound({ width, height }: MarkSpot): { x: number; y: number }[] {
  const [across, down] = [width + APART_PX, height + APART_PX]
  const places = [{ x: 0, y: 0 }]
  for (let ring = 1; ring <= RINGS; ring++) {
    for (const y of [-1, 1]) for (const x of [0, -1, 1]) places.push({ x: x * across, y: y * (ring + 0.4) * down })
    for (const x of [-1, 1]) places.push({ x: x * (ring + 0.2) * across, y: 0 })
  }
  return places
}

const meets = (a: MarkSpot, b: MarkSpot): boolean => Math.abs(a.x - b.x) * 2 < a.width + b.width && Math.abs(a.y - b.y) * 2 < a.height + b.height
