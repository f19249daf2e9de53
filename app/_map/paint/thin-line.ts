/** Leaves out points nearer than a distance to the last one kept; the ends stay. */
export function thinLine(line: readonly number[], nearest_px: number): number[] {
  const kept: number[] = []
  let x = Infinity
  let y = Infinity
  for (let i = 0; i + 1 < line.length; i += 2) {
    const nextX = line[i] ?? 0
    const nextY = line[i + 1] ?? 0
    const isLast = i + 3 >= line.length
    const isNear = Math.abs(nextX - x) + Math.abs(nextY - y) < nearest_px
    if (isNear && isLast && kept.length > 2) kept.splice(-2)
    if (isNear && !isLast) continue
    kept.push(nextX, nextY)
    x = nextX
    y = nextY
  }
  return kept
}
