import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import { importElevationWithNode } from '@/app/_worker/node/import-elevation-with-node'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { roadWay } from '@/app/_hose/road-way'
import { heightsUnder } from '@/app/_worker/ground/lay-heights'
import { layStands } from '@/app/_worker/ground/lay-stands'
import { RoadDesk } from '@/app/_worker/road-desk'
import type { Bundle, Lay } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { answerLay, type HoseLayAnswer } from '@/lib/supply'
import { decodeHeightGrid } from '@/lib/terrain'
import { demoBundle } from '../../fixtures/demo-roads'

/*
 * The demonstration district's own roads and elevation, both invented: from the Covered Bridge to the feed mill a road goes over a
 * ridge some 100 ft above either end, more than two miles of hose.
 */
const PUMPERS = ['engine-11', 'engine-71', 'engine-12']
let answer: HoseLayAnswer
let stands_ft: readonly number[]
let lay: Lay
let desk: RoadDesk
let district: Bundle['district']

beforeAll(async () => {
  const bundle = demoBundle('yarrow-bank')
  const { plan } = bundle
  district = { ...bundle.district, equipment: [...bundle.district.equipment, { id: 'hose-more', name: 'More 5 in hose', kind: 'hose', size_in: 5, length_ft: 12_000 }] }
  const imported = await importElevationWithNode(new Uint8Array(readFileSync('public/demo/ostrel-valley-elevation.tif')), 'ostrel-valley-elevation.tif', district.bounds!)
  const grid = decodeHeightGrid(imported.terrainBlob)
  if ('code' in grid) throw grid
  const graph = decodeRoadGraph((await importWithNode(new Uint8Array(readFileSync('public/demo/ostrel-valley.osm.gz')), 'ostrel-valley.osm.gz')).graphBlob)
  if ('code' in graph) throw graph
  desk = new RoadDesk(graph, district.roadNotes)
  const placeOf = (list: readonly { id: string; point: { lat: number; lon: number } }[], id: string) => list.find((one) => one.id === id)!.point
  const way = roadWay((ask) => desk.find(ask), { from: placeOf(district.draftSites, 'draft-covered-bridge'), to: placeOf(district.hazards, 'feed-mill'), via: [] })
  if ('code' in way) throw way
  lay = { id: 'ridge', name: 'Over the ridge', fromId: 'draft-covered-bridge', toId: 'fireGround', points: way, pumperIds: PUMPERS, stretches: [{ id: 's1', size_in: 5 }], standsOnRoads: true }
  const places = heightsUnder(grid, district, lay, desk)
  stands_ft = places.stands_ft!
  answer = answerLay({ district, plan: { ...plan, fillSites: [], dumpSites: [], hoseLays: [lay] } }, lay, places)
})

test('the ground between is higher than both ends', () => {
  const heights = answer.ground.map(({ height_ft }) => height_ft)
  expect(Math.max(...heights) - Math.max(heights[0]!, heights.at(-1)!)).toBeGreaterThan(60)
  expect(answer.heights).toBe('terrain')
})

test('every pumper stands beside a road that all of them can drive to', () => {
  expect(answer.pumpers.length).toBeGreaterThan(1)
  const hosePerWay = answer.hose_ft! / answer.way_ft
  for (const { at_ft } of answer.pumpers) expect(Math.min(...stands_ft.map((place_ft) => Math.abs(place_ft * hosePerWay - at_ft)))).toBeLessThan(0.5)
  expect(answer.issues.map(({ code }) => code)).not.toContain('lay-stands-unknown')
})

test('every pressure is within its hose and pump, flowing and stopped', () => {
  expect(answer.flow_gpm!).toBeGreaterThan(100)
  answer.pumpers.forEach(({ intake_psi, discharge_psi, id }, i) => {
    if (i > 0) expect(intake_psi!).toBeGreaterThanOrEqual(20 - 1e-3)
    expect(discharge_psi).toBeLessThanOrEqual((district.apparatus.find((unit) => unit.id === id) as { discharge_psi?: number }).discharge_psi ?? 250)
  })
  for (const { flowing_psi, stopped_psi, working_psi } of answer.plot) {
    expect(flowing_psi).toBeGreaterThanOrEqual(5 - 1e-3)
    expect(flowing_psi).toBeLessThanOrEqual(working_psi + 1e-3)
    expect(stopped_psi).toBeLessThanOrEqual(working_psi + 1e-3)
  }
})

test('a road that one of them cannot drive is no place for any: with a pumper too heavy for every bridge fewer are left', () => {
  const heavy = { ...district, apparatus: district.apparatus.map((unit) => (unit.id === 'engine-12' ? { ...unit, full_lb: 79_000 } : unit)) }
  const closed = new RoadDesk(desk.graph, [...district.roadNotes, { id: 'n', name: 'Closed', point: lay.points[Math.floor(lay.points.length / 2)]!, closed: true }])
  expect(layStands(closed, heavy, lay).length).toBeLessThan(stands_ft.length)
})

test('off the roads there is no place', () => {
  const { lat, lon } = lay.points[0]!
  expect(layStands(desk, district, { points: [{ lat: lat + 0.006, lon: lon - 0.006 }, { lat: lat + 0.008, lon: lon - 0.006 }], pumperIds: ['engine-11'] })).toEqual([])
})
