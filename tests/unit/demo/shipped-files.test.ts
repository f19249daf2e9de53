import { beforeAll, describe, expect, test } from 'vitest'
import { buildDemo, type Demo } from '@/app/_demo/build-demo'
import { buildLandscape, type Landscape } from '@/app/_demo/build-landscape'
import { isInFrame } from '@/app/_demo/frame'
import { shippedBundle, shippedDistrict, shippedElevation, shippedMap, shippedPlans } from './shipped-demo'

let land: Landscape
let demo: Demo

// The one test file that makes the whole demo anew, which takes many seconds on a busy machine.
beforeAll(async () => {
  land = buildLandscape()
  demo = await buildDemo(land)
}, 300_000)

/** Equal but for the last digits of a float, in which machines may differ. */
function expectSame(shipped: unknown, made: unknown, path = ''): void {
  if (typeof made === 'number' && typeof shipped === 'number') expect(Math.abs(shipped - made), path).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(made)))
  else if (made !== null && typeof made === 'object' && shipped !== null && typeof shipped === 'object') {
    expect(Object.keys(shipped).sort(), path).toEqual(Object.keys(made).sort())
    for (const [key, value] of Object.entries(made)) expectSame((shipped as Record<string, unknown>)[key], value, `${path}.${key}`)
  } else expect(shipped, path).toBe(made)
}

describe('the shipped demo is what its generator makes (else: npx tsx app/_cli/make-demo.ts)', () => {
  test('map', () => {
    const [shipped, made] = [shippedMap().split('\n'), demo.map.split('\n')]
    expect(shipped.length).toBe(made.length)
    expect(shipped.findIndex((line, i) => line !== made[i])).toBe(-1)
  })

  test('elevation', () => {
    expect(Buffer.compare(shippedElevation(), Buffer.from(demo.elevation))).toBe(0)
  })

  test('district and plans', () => {
    expectSame(shippedDistrict(), demo.district)
    expectSame(shippedPlans(), demo.plans)
  })

  test('bundles, with the ways found on these roads', () => {
    for (const bundle of demo.bundles) expectSame(shippedBundle(bundle.plan.id), bundle)
  })
})

describe('the land', () => {
  test('water never runs uphill', () => {
    for (const { id, water } of land.streams) {
      let lowest = Infinity
      for (const here of water.filter(isInFrame)) {
        const level = land.field.at(here)
        expect(level - lowest, `${id} at ${here.x.toFixed(0)}, ${here.y.toFixed(0)}`).toBeLessThan(1)
        lowest = Math.min(lowest, level)
      }
    }
  })

  test('each stream falls from its source to its mouth', () => {
    for (const { water } of land.streams) {
      const inside = water.filter(isInFrame)
      expect(land.field.at(inside[0]!)).toBeGreaterThan(land.field.at(inside[inside.length - 1]!) + 5)
    }
  })

  test('a brook ends on a spot of the stream it flows into', () => {
    for (const { into, water } of land.streams.filter(({ into: main }) => main !== undefined)) {
      const mouth = water[water.length - 1]!
      expect(land.streams.find(({ id }) => id === into)!.water.some(({ x, y }) => x === mouth.x && y === mouth.y)).toBe(true)
    }
  })

  test('hills stand a hundred metres and more above the river, and no cliff hangs over a road', () => {
    const heights = [...Array(120).keys()].flatMap((i) => [...Array(90).keys()].map((j) => land.field.at({ x: i * 100, y: j * 100 })))
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(100)
    const slopes = land.network.roads.flatMap(({ nodes }) => nodes.map(({ spot }) => land.field.slopeAt(spot)))
    expect(Math.max(...slopes)).toBeLessThan(0.6)
  })
})
