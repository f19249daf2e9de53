export type ArrowPlace = { x: number; y: number; angle: number }

/**
 * Where arrows of direction stand along a line: evenly, none within half a gap of its ends;
 * a line shorter than a gap has one in its middle, a very short one none.
 */
export function arrowPlaces(line: readonly number[], gap_px: number): ArrowPlace[] {
  const lengths: number[] = []
  let total = 0
  for (let i = 0; i + 3 < line.length; i += 2) {
    const length = Math.hypot((line[i + 2] ?? 0) - (line[i] ?? 0), (line[i + 3] ?? 0) - (line[i + 1] ?? 0))
    lengths.push(length)
    total += length
  }
  if (total < gap_px / 5) return []
  const count = Math.max(1, Math.floor(total / gap_px))
  const places: ArrowPlace[] = []
  let passed = 0
  let segment = 0
  for (let k = 0; k < count; k += 1) {
    const at = (total * (k + 0.5)) / count
    while (segment < lengths.length - 1 && passed + (lengths[segment] ?? 0) < at) {
      passed += lengths[segment] ?? 0
      segment += 1
    }
    const share = (at - passed) / (lengths[segment] || 1)
    const [x = 0, y = 0, nextX = 0, nextY = 0] = line.slice(2 * segment, 2 * segment + 4)
    places.push({ x: x + (nextX - x) * share, y: y + (nextY - y) * share, angle: Math.atan2(nextY - y, nextX - x) })
  }
  return places
}
