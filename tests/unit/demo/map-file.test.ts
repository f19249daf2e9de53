import { beforeAll, describe, expect, test } from 'vitest'
import { findCrossing } from '@/app/_demo/geometry/line'
import { isInRing } from '@/app/_demo/geometry/polygon'
import { spotFromPoint, type Spot } from '@/app/_demo/frame'
import { DEGREES_E7, type OsmExtract, type Tags } from '@/lib/osm'
import { shippedExtract, shippedMap } from './shipped-demo'

type Way = { tags: Tags; nodes: number[]; line: Spot[] }

let extract: OsmExtract
let ways: Way[]
const roads = (): Way[] => ways.filter(({ tags }) => tags['highway'] !== undefined)

beforeAll(async () => {
  extract = await shippedExtract()
  const spotOf = (node: number): Spot => spotFromPoint({ lat: extract.nodeLatE7[node]! / DEGREES_E7, lon: extract.nodeLonE7[node]! / DEGREES_E7 })
  ways = extract.wayTags.map((tags, way) => {
    const nodes = [...extract.wayNode.subarray(extract.wayStart[way], extract.wayStart[way + 1])]
    return { tags, nodes, line: nodes.map(spotOf) }
  })
})

test('the file says that it is invented, and by what it was made', () => {
  const head = shippedMap().slice(0, 900)
  expect(head).toMatch(/<!-- An invented place/)
  expect(head).toMatch(/<osm version="0.6" generator="millrace demo"/)
})

test('the file is read without anything odd in it', () => {
  expect(extract.issues).toEqual([])
  expect(extract.counts.highwayCount).toBeGreaterThan(250)
})

describe('roads', () => {
  test('that cross share a node, or one is a bridge', () => {
    const segments = roads().flatMap(({ tags, nodes, line }) => line.slice(1).map((b, i) => ({ tags, a: line[i]!, b, from: nodes[i]!, to: nodes[i + 1]! })))
    const cells = new Map<string, typeof segments>()
    const crossed: string[] = []
    for (const one of segments) {
      const near = new Set<(typeof segments)[number]>()
      for (let x = Math.floor(Math.min(one.a.x, one.b.x) / 200); x <= Math.floor(Math.max(one.a.x, one.b.x) / 200); x++)
        for (let y = Math.floor(Math.min(one.a.y, one.b.y) / 200); y <= Math.floor(Math.max(one.a.y, one.b.y) / 200); y++) {
          const cell = cells.get(`${x},${y}`) ?? []
          cells.set(`${x},${y}`, cell)
          for (const other of cell) near.add(other)
          cell.push(one)
        }
      for (const other of near) {
        if ([one.from, one.to].some((node) => node === other.from || node === other.to)) continue
        if (findCrossing(one.a, one.b, other.a, other.b)) crossed.push(`${one.tags['name']} × ${other.tags['name']} at ${one.a.x.toFixed(0)}, ${one.a.y.toFixed(0)}`)
      }
    }
    expect(crossed).toEqual([])
  })

  test('run through no pond and no reservoir', () => {
    const still = ways.filter(({ tags }) => tags['natural'] === 'water' && tags['water'] !== 'river')
    expect(still.length).toBeGreaterThan(8)
    const wet = roads().filter(({ line }) => line.some((spot) => still.some((water) => isInRing(water.line, spot))))
    expect(wet.map(({ tags }) => tags['name'] ?? tags['highway'])).toEqual([])
  })

  test('cross running water only by a bridge or a ford', () => {
    const streams = ways.filter(({ tags }) => tags['waterway'] === 'river' || tags['waterway'] === 'stream')
    expect(streams).toHaveLength(14)
    const forded = new Set([...extract.taggedNode].filter((_, i) => extract.nodeTags[i]!['ford'] === 'yes'))
    const unbridged = roads().filter(({ tags, nodes, line }) =>
      tags['bridge'] === undefined &&
      line.slice(1).some((b, i) => !forded.has(nodes[i]!) && !forded.has(nodes[i + 1]!) && streams.some((stream) => stream.line.slice(1).some((d, k) => findCrossing(line[i]!, b, stream.line[k]!, d)))))
    expect(unbridged.map(({ tags }) => tags['name'] ?? tags['highway'])).toEqual([])
    expect(forded.size).toBeGreaterThan(0)
  })

  test('hang together: from any one of them to any other', () => {
    const parent = new Map<number, number>()
    const rootOf = (node: number): number => {
      let at = node
      while (parent.has(at)) at = parent.get(at)!
      return at
    }
    for (const { nodes } of roads())
      for (const node of nodes.slice(1)) {
        const [a, b] = [rootOf(nodes[0]!), rootOf(node)]
        if (a !== b) parent.set(a, b)
      }
    expect(new Set(roads().map(({ nodes }) => rootOf(nodes[0]!))).size).toBe(1)
  })
})

describe('what a heavy vehicle meets is there', () => {
  const count = (holds: (tags: Tags) => boolean): number => roads().filter(({ tags }) => holds(tags)).length

  test('a bridge posted 15 tons, a low underpass, a one-way loop, a closed turn', () => {
    expect(count(({ bridge, maxweight }) => bridge === 'yes' && maxweight === '15 st')).toBe(1)
    expect(count(({ maxheight }) => maxheight === "10'6\"")).toBeGreaterThan(0)
    expect(count(({ oneway, highway }) => oneway === 'yes' && highway === 'service')).toBeGreaterThanOrEqual(3)
    expect(extract.relations.filter(({ tags }) => tags['restriction'] === 'no_left_turn')).toHaveLength(1)
  })

  test('private drives, farm lanes, gravel roads and tracks', () => {
    expect(count(({ service, access }) => service === 'driveway' && access === 'private')).toBeGreaterThan(40)
    expect(count(({ surface }) => surface === 'gravel')).toBeGreaterThan(20)
    expect(count(({ highway }) => highway === 'track')).toBeGreaterThan(5)
  })

  test('hydrants in one village only', () => {
    const hydrants = [...extract.taggedNode].filter((_, i) => extract.nodeTags[i]!['fire_hydrant:type'] === 'pillar')
    expect(hydrants.length).toBeGreaterThan(8)
    for (const node of hydrants) {
      const { x, y } = spotFromPoint({ lat: extract.nodeLatE7[node]! / DEGREES_E7, lon: extract.nodeLonE7[node]! / DEGREES_E7 })
      expect(Math.abs(x - 5900) < 500 && Math.abs(y - 5500) < 350).toBe(true)
    }
  })
})
