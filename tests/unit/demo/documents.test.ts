import { beforeAll, describe, expect, test } from 'vitest'
import { spotFromPoint, type Spot } from '@/app/_demo/frame'
import { nearestOnLine } from '@/app/_demo/geometry/line'
import { isInRing } from '@/app/_demo/geometry/polygon'
import { DEGREES_E7 } from '@/lib/osm'
import { checkPlan, districtSchema, planSchema, type District } from '@/lib/plan'
import type { Point } from '@/lib/geo'
import { shippedDistrict, shippedExtract, shippedPlans } from './shipped-demo'

const district = shippedDistrict()
const plans = shippedPlans()

test('district and plans are whole documents', () => {
  expect(districtSchema.safeParse(district).error).toBeUndefined()
  for (const plan of plans) expect(planSchema.safeParse(plan).error).toBeUndefined()
})

test('nothing blocks a plan, and every id in it resolves', () => {
  for (const plan of plans) expect(checkPlan({ district, plan })).toEqual([])
})

test('the district holds what a rural district holds', () => {
  const kinds = (list: District['apparatus'], kind: string) => list.filter((unit) => unit.kind === kind)
  expect(district.stations.filter(({ mutualAid }) => mutualAid).length).toBe(1)
  expect(kinds(district.apparatus, 'pumper')).toHaveLength(5)
  expect(kinds(district.apparatus, 'tender')).toHaveLength(6)
  expect(kinds(district.apparatus, 'portablePump')).toHaveLength(2)
  expect(new Set(district.sources.map(({ kind }) => kind))).toEqual(new Set(['lake', 'pond', 'stream', 'cistern', 'dryHydrant', 'pressureHydrant']))
  expect(district.draftSites.length).toBeGreaterThanOrEqual(8)
  expect(district.hazards.length).toBeGreaterThanOrEqual(4)
  expect(district.roadNotes).toHaveLength(3)
})

test('who measured is a role, with a day in 2024 to 2026', () => {
  const items = [...district.stations, ...district.sources, ...district.draftSites, ...district.hazards, ...district.roadNotes, ...district.apparatus, ...district.equipment]
  const marks = items.flatMap(({ evidence = {} }) => Object.values(evidence))
  const measured = marks.filter(({ mark }) => mark === 'measured')
  expect(measured.length).toBeGreaterThan(30)
  expect(measured.length).toBeLessThan(marks.length)
  for (const { by, on } of measured) {
    expect(by).toMatch(/^(Capt\.|Chief|Water supply officer|Pump test crew|Weighed)/)
    expect(on).toMatch(/^202[456]-/)
  }
})

test('evidence names only fields that have a number', () => {
  const items = [district, ...district.stations, ...district.sources, ...district.draftSites, ...district.hazards, ...district.roadNotes, ...district.apparatus, ...district.equipment]
  for (const item of items) for (const field of Object.keys(item.evidence ?? {})) expect(typeof (item as Record<string, unknown>)[field], `${item.id} ${field}`).toBe('number')
})

describe('things lie where the map has them', () => {
  let roads: Spot[][]
  let water: Spot[][]
  let pools: Spot[][]
  let buildings: Spot[][]

  beforeAll(async () => {
    const extract = await shippedExtract()
    const linesOf = (key: string, isWanted: (value: string) => boolean): Spot[][] =>
      extract.wayTags.flatMap((tags, way) => (tags[key] !== undefined && isWanted(tags[key])
        ? [[...extract.wayNode.subarray(extract.wayStart[way], extract.wayStart[way + 1])].map((node) => spotFromPoint({ lat: extract.nodeLatE7[node]! / DEGREES_E7, lon: extract.nodeLonE7[node]! / DEGREES_E7 }))]
        : []))
    roads = linesOf('highway', () => true)
    pools = linesOf('natural', (value) => value === 'water')
    water = [...pools, ...linesOf('waterway', (value) => value === 'river' || value === 'stream')]
    buildings = linesOf('building', () => true)
  })

  const awayFrom = (lines: readonly Spot[][], point: Point): number => Math.min(...lines.map((line) => nearestOnLine(line, spotFromPoint(point)).away))

  test.each([...district.stations, ...district.draftSites, ...plans.flatMap(({ fillSites, dumpSites }) => [...fillSites, ...dumpSites])].map((item) => ({ item, name: item.name })))('$name is on or beside a road', ({ item }) => {
    expect(awayFrom(roads, item.point)).toBeLessThan(15)
  })

  test.each(district.draftSites.filter(({ sourceId }) => sourceId !== 'meetinghouse-cistern').map((item) => ({ item, name: item.name })))('$name is within reach of water', ({ item }) => {
    const reach_m = ((item.hoseRun_ft ?? 20) + (item.dryHydrant?.pipe_ft ?? 0)) * 0.3048
    expect(awayFrom(water, item.point)).toBeLessThan(reach_m + 16)
    expect(pools.some((ring) => isInRing(ring, spotFromPoint(item.point)))).toBe(false)
  })

  test.each(district.hazards.map((item) => ({ item, name: item.name })))('$name is a building', ({ item }) => {
    const spot = spotFromPoint(item.point)
    expect(buildings.some((ring) => isInRing(ring, spot)) || awayFrom(buildings, item.point) < 12).toBe(true)
  })

  test.each(district.sources.filter(({ kind }) => kind !== 'pressureHydrant' && kind !== 'cistern').map((item) => ({ item, name: item.name })))('$name is water', ({ item }) => {
    const spot = spotFromPoint(item.point)
    expect(pools.some((ring) => isInRing(ring, spot)) || awayFrom(water, item.point) < 10).toBe(true)
  })

  test('a road note stands on its road', () => {
    for (const { point } of district.roadNotes) expect(awayFrom(roads, point)).toBeLessThan(12)
  })
})
