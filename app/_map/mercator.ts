import type { Point } from '@/lib/geo'

/**
 * Where a point lies on the Web Mercator square, both from 0 to 1, y to the south (EPSG:3857).
 * @returns x, y, x, y … for the points of a line
 */
export function mercatorLine(points: readonly Point[]): Float64Array {
  const line = new Float64Array(points.length * 2)
  points.forEach(({ lat, lon }, i) => {
    const sine = Math.sin((lat * Math.PI) / 180)
    line[2 * i] = lon / 360 + 0.5
    line[2 * i + 1] = 0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)
  })
  return line
}

const kept = new WeakMap<readonly Point[], Float64Array>()

/** As `mercatorLine`, worked out once for a line that does not change. */
export function keptMercatorLine(points: readonly Point[]): Float64Array {
  const known = kept.get(points)
  if (known) return known
  const line = mercatorLine(points)
  kept.set(points, line)
  return line
}
