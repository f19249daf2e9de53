import { MISSING_NODE } from './osm-extract'

/**
 * Joins ways end to end into closed rings; what does not close is left out.
 *
 * @param ways node indexes of each way
 * @returns rings of node indexes, first and last equal
 */
export function ringsFromWays(ways: readonly (readonly number[])[]): number[][] {
  const rings: number[][] = []
  const open = ways.filter((way) => way.length > 1 && !way.includes(MISSING_NODE)).map((way) => [...way])
  const byEnd = new Map<number, number[]>()
  open.forEach((way, i) => {
    for (const end of [way[0] ?? 0, way[way.length - 1] ?? 0]) byEnd.set(end, [...(byEnd.get(end) ?? []), i])
  })
  const isUsed = new Uint8Array(open.length)
  open.forEach((way, i) => {
    if (isUsed[i]) return
    isUsed[i] = 1
    const ring = [...way]
    for (;;) {
      const end = ring[ring.length - 1] ?? 0
      if (end === ring[0]) {
        if (ring.length > 3) rings.push(ring)
        return
      }
      const next = (byEnd.get(end) ?? []).find((other) => !isUsed[other])
      if (next === undefined) return
      isUsed[next] = 1
      const more = open[next] ?? []
      ring.push(...(more[0] === end ? more : [...more].reverse()).slice(1))
    }
  })
  return rings
}
