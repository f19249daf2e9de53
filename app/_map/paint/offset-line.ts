/** A line on the screen: x, y, x, y … in pixels. */
export type ScreenLine = readonly number[]

/**
 * Moves a line sideways, so that the ways there and back lie beside each other.
 *
 * @param line      without equal neighbours
 * @param offset_px to the right of the direction of travel; 0 or below 0 too
 * @returns as many points; corners are mitred, sharp ones no further than twice the offset
 */
export function offsetLine(line: ScreenLine, offset_px: number): number[] {
  const count = line.length / 2
  if (count < 2 || offset_px === 0) return [...line]
  const moved: number[] = []
  let before = normalAt(line, 0)
  for (let i = 0; i < count; i += 1) {
    const after = i < count - 1 ? normalAt(line, i) : before
    const x = before[0] + after[0]
    const y = before[1] + after[1]
    const square = x * x + y * y
    // At a full turn back the two normals cancel out: stay on the side of the way that came.
    const [mx, my] = square < 1 ? before : [(2 * x) / square, (2 * y) / square]
    moved.push((line[2 * i] ?? 0) + mx * offset_px, (line[2 * i + 1] ?? 0) + my * offset_px)
    before = after
  }
  return moved
}

/** Unit vector to the right of segment i; on a screen y grows downwards. */
function normalAt(line: ScreenLine, i: number): readonly [number, number] {
  const dx = (line[2 * i + 2] ?? 0) - (line[2 * i] ?? 0)
  const dy = (line[2 * i + 3] ?? 0) - (line[2 * i + 1] ?? 0)
  const length = Math.hypot(dx, dy) || 1
  return [-dy / length, dx / length]
}
