export type HitSpot = { readonly x: number; readonly y: number }

/** Symbols nearer to each other than this are taken to stand at one place: between them there is no side to be on. */
export const SAME_PLACE_PX = 8

/**
 * Where each symbol can be hit: the square round its middle, less what lies nearer to the middle of another. So no two
 * of them overlap, and a finger between two symbols takes the nearer one.
 *
 * @param spots   middles of the symbols on the screen
 * @param edge_px of the square
 * @returns corners from the square's top left, in order; undefined where all of the square is the symbol's own
 */
export function hitCells(spots: readonly HitSpot[], edge_px: number): (HitSpot[] | undefined)[] {
  const half = edge_px / 2
  return spots.map((spot, k) => {
    const near = spots.filter((other, i) => {
      const away_px = Math.hypot(other.x - spot.x, other.y - spot.y)
      return i !== k && away_px >= SAME_PLACE_PX && away_px < edge_px * Math.SQRT2
    })
    if (near.length === 0) return undefined
    let cell: HitSpot[] = [{ x: -half, y: -half }, { x: half, y: -half }, { x: half, y: half }, { x: -half, y: half }]
    for (const other of near) cell = nearerThan(cell, other.x - spot.x, other.y - spot.y)
    return cell.map(({ x, y }) => ({ x: x + half, y: y + half }))
  })
}

/** What of a convex shape lies nearer to the origin than to a point. */
function nearerThan(shape: readonly HitSpot[], x: number, y: number): HitSpot[] {
  const beyond = (at: HitSpot) => at.x * x + at.y * y - (x * x + y * y) / 2
  return shape.flatMap((at, i) => {
    const next = shape[(i + 1) % shape.length]!
    const [here, there] = [beyond(at), beyond(next)]
    const along = here / (here - there)
    const crossing = here > 0 !== there > 0 ? [{ x: at.x + along * (next.x - at.x), y: at.y + along * (next.y - at.y) }] : []
    return here > 0 ? crossing : [at, ...crossing]
  })
}
