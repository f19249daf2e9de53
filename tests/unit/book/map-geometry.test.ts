import * as turf from '@turf/turf'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { scaleBar } from '@/app/_book/draw/scale-bar'
import { clipLine, clipRing, fitView, groundOf, hatchLines, isApart, placeLabels, spotOf, type Box } from '@/lib/book'

const box: Box = { left: 40, top: 60, right: 540, bottom: 460 }
const coordinate = fc.double({ min: -200, max: 800, noNaN: true })
const pairs = (line: readonly number[]): [number, number][] => Array.from({ length: line.length / 2 }, (_, i) => [line[2 * i] ?? 0, line[2 * i + 1] ?? 0])

describe('a view of the ground', () => {
  // Reference: great-circle distance of Turf, a general library.
  test('has one scale in all directions, true to the ground', () => {
    fc.assert(fc.property(fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: -170, max: 170, noNaN: true }), fc.double({ min: 0, max: 360, noNaN: true }), fc.double({ min: 0.1, max: 6, noNaN: true }), (lat, lon, bearing, km) => {
      const [east = 0, north = 0] = turf.destination([lon, lat], km, bearing).geometry.coordinates
      const [a, b] = [{ lat, lon }, { lat: north, lon: east }]
      const view = fitView([a, b], box)
      const [p, q] = [spotOf(view, a), spotOf(view, b)]
      const onPaper_km = (Math.hypot(p.x - q.x, p.y - q.y) * view.metresPerPoint) / 1000
      expect(Math.abs(onPaper_km / turf.distance([lon, lat], [east, north]) - 1)).toBeLessThan(0.003)
    }))
  })

  test('holds all its points with room about them, and knows its ground', () => {
    const points = [{ lat: 43.05, lon: -72.4 }, { lat: 43.09, lon: -72.31 }, { lat: 43.01, lon: -72.35 }]
    const view = fitView(points, box, { room: 44 })
    for (const point of points) {
      const { x, y } = spotOf(view, point)
      expect(x).toBeGreaterThanOrEqual(box.left + 43.9)
      expect(x).toBeLessThanOrEqual(box.right - 43.9)
      expect(y).toBeGreaterThanOrEqual(box.top + 43.9)
      expect(y).toBeLessThanOrEqual(box.bottom - 43.9)
    }
    const { south, north, west, east } = groundOf(view)
    expect(spotOf(view, { lat: north, lon: west })).toEqual({ x: expect.closeTo(box.left, 6) as number, y: expect.closeTo(box.top, 6) as number })
    expect(spotOf(view, { lat: south, lon: east })).toEqual({ x: expect.closeTo(box.right, 6) as number, y: expect.closeTo(box.bottom, 6) as number })
  })

  test('has a scale bar as long as it says, a round length, no longer than asked', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 200, noNaN: true }), fc.constantFrom('us', 'metric'), (metresPerPoint, system) => {
      const { across, label, metres } = scaleBar(metresPerPoint, 78, system)
      expect(across).toBeLessThanOrEqual(78 + 1e-9)
      expect(across * metresPerPoint).toBeCloseTo(metres, 6)
      const said = Number(label.replace(/[^\d.]/g, ''))
      // 1 mi = 1,609.344 m and 1 ft = 0.3048 m, both exact by definition.
      const unit = /mi/.test(label) ? 1609.344 : /ft/.test(label) ? 0.3048 : /km/.test(label) ? 1000 : 1
      if (label !== '') expect(said * unit).toBeCloseTo(metres, 6)
    }))
  })
})

describe('cutting to a box', () => {
  test('leaves the same area of a ring as Turf’s clipping (a general library)', () => {
    fc.assert(fc.property(fc.double({ min: -100, max: 700, noNaN: true }), fc.double({ min: -100, max: 700, noNaN: true }), fc.array(fc.double({ min: 20, max: 300, noNaN: true }), { minLength: 5, maxLength: 9 }), (x, y, radii) => {
      const ring = radii.flatMap((radius, i) => [x + radius * Math.cos((i / radii.length) * 2 * Math.PI), y + radius * Math.sin((i / radii.length) * 2 * Math.PI)])
      // Shoelace, on the plane: Turf's own areas are on the globe.
      const area = (points: readonly (readonly [number, number])[]) => Math.abs(points.reduce((sum, [ax, ay], i) => { const [bx = 0, by = 0] = points[(i + 1) % points.length] ?? []; return sum + ax * by - bx * ay }, 0)) / 2
      const scaled = pairs(ring).map(([px, py]): [number, number] => [px / 100, py / 100])
      const cut = turf.bboxClip(turf.polygon([[...scaled, scaled[0]!]]), [box.left / 100, box.top / 100, box.right / 100, box.bottom / 100])
      const theirs = cut.geometry.type === 'Polygon' ? cut.geometry.coordinates.reduce((sum, one) => sum + area(one as [number, number][]), 0) : 0
      expect(area(pairs(clipRing(ring, box))) / 10_000).toBeCloseTo(theirs, 3)
    }))
  })

  test('keeps of a line what is inside, and nothing else', () => {
    fc.assert(fc.property(fc.array(coordinate, { minLength: 4, maxLength: 24 }).map((line) => line.slice(0, line.length - (line.length % 2))), (line) => {
      const parts = clipLine(line, box)
      for (const part of parts) for (const [x, y] of pairs(part)) {
        expect(x).toBeGreaterThanOrEqual(box.left - 1e-6)
        expect(x).toBeLessThanOrEqual(box.right + 1e-6)
        expect(y).toBeGreaterThanOrEqual(box.top - 1e-6)
        expect(y).toBeLessThanOrEqual(box.bottom + 1e-6)
      }
      const lengthOf = (one: readonly number[]) => pairs(one).reduce((sum, [x, y], i, all) => (i === 0 ? 0 : sum + Math.hypot(x - all[i - 1]![0], y - all[i - 1]![1])), 0)
      // Reference: the line walked in small steps, those inside counted.
      let inside = 0
      const points = pairs(line)
      for (let i = 1; i < points.length; i++) {
        const [ax, ay] = points[i - 1]!, [bx, by] = points[i]!
        const steps = 400
        for (let n = 0; n < steps; n++) {
          const t = (n + 0.5) / steps
          const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)]
          if (x >= box.left && x <= box.right && y >= box.top && y <= box.bottom) inside += Math.hypot(bx - ax, by - ay) / steps
        }
      }
      expect(Math.abs(parts.reduce((sum, part) => sum + lengthOf(part), 0) - inside)).toBeLessThan(4 * points.length)
    }), { numRuns: 60 })
  })
})

test('ruled lines lie in the water and not on its islands', () => {
  const lake = [0, 0, 100, 10, 90, 80, 20, 95], island = [40, 30, 60, 30, 60, 50, 40, 50]
  const lines = hatchLines([lake, island], 4)
  expect(lines.length).toBeGreaterThan(15)
  const close = (ring: number[]) => [...pairs(ring), pairs(ring)[0]!]
  const water = turf.polygon([close(lake), close(island)])
  for (const [ax = 0, y = 0, bx = 0] of lines) for (const t of [0.05, 0.5, 0.95]) expect(turf.booleanPointInPolygon([ax + t * (bx - ax), y], water)).toBe(true)
})

test('names never lie on each other, on what stands there, or over the edge', () => {
  const wish = fc.record({ x: fc.double({ min: 0, max: 600, noNaN: true }), y: fc.double({ min: 0, max: 500, noNaN: true }), across: fc.double({ min: 5, max: 150, noNaN: true }), down: fc.double({ min: 5, max: 40, noNaN: true }), angle: fc.double({ min: -1.5, max: 1.5, noNaN: true }) })
  fc.assert(fc.property(fc.array(wish, { maxLength: 40 }), (wishes) => {
    const taken = [{ left: 200, top: 200, right: 260, bottom: 240 }]
    const { placed, left } = placeLabels(wishes.map(({ x, y, angle, across, down }, what) => ({ what, across, down, places: [{ x, y, angle }, { x: x + 30, y }] })), box, taken)
    expect(placed.length + left.length).toBe(wishes.length)
    placed.forEach(({ box: own }, i) => {
      for (const other of [...taken, ...placed.slice(i + 1).map((one) => one.box)]) expect(isApart(own, other)).toBe(true)
      expect(own.left).toBeGreaterThanOrEqual(box.left)
      expect(own.right).toBeLessThanOrEqual(box.right)
    })
  }))
})
