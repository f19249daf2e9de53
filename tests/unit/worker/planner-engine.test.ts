import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { OsmExtract } from '@/lib/osm'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import { evaluatePlan, legFinder, legUses, resolveLegs } from '@/lib/supply'
import { buildRoadGraph, encodeRoadGraph, decodeRoadGraph, type RoadGraph } from '@/lib/roads'
import { readOsm } from '@/lib/osm'
import { gunzip, inflate } from '@/app/_worker/decompress'
import { movePlace } from '@/app/_worker/move-place'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import { plannerService } from '@/app/_worker/planner-service'

const overpassFile = new URL('./small-roads.json', import.meta.url)
const HASH = 'a'.repeat(64)
let blob: Uint8Array<ArrayBuffer>
let graph: RoadGraph

beforeAll(async () => {
  const extract = (await readOsm(new Uint8Array(readFileSync(overpassFile)), { inflate, gunzip })) as OsmExtract
  blob = encodeRoadGraph(buildRoadGraph(extract).graph)
  graph = decodeRoadGraph(blob) as RoadGraph
})

/** Two roads from the pond to the barn: the short one over a bridge that carries 10 t. */
function bundleWithRoads(): Bundle {
  const read = readBundle({
    format: 'millrace-plan', version: 1, legs: [],
    district: {
      id: 'D', name: 'Alder Hollow', sources: [], draftSites: [], hazards: [], roadNotes: [], equipment: [],
      roads: { hash: HASH, name: 'small-roads.json', attribution: 'made up', importedOn: '2026-01-01' },
      stations: [{ id: 'ST', name: 'Station', point: { lat: 50.0, lon: 11.0 } }],
      apparatus: [
        { kind: 'pumper', id: 'E1', name: 'Engine 1', stationId: 'ST', rated_gpm: 1250, tank_gal: 750, full_lb: 38000 },
        { kind: 'pumper', id: 'E2', name: 'Engine 2', stationId: 'ST', rated_gpm: 1250, tank_gal: 750, full_lb: 38000 },
        { kind: 'tender', id: 'T1', name: 'Tender 1', stationId: 'ST', tank_gal: 3000, full_lb: 50000, empty_lb: 20000 },
        { kind: 'tender', id: 'T2', name: 'Tender 2', stationId: 'ST', tank_gal: 2000, full_lb: 40000, empty_lb: 19000 },
      ],
    },
    plan: {
      id: 'P', name: 'Barn', districtId: 'D', fireGround: { lat: 50.0, lon: 11.0405 }, firstDueId: 'E1', demand: [{ id: 'd', from_s: 0, flow_gpm: 250 }], legNotes: [],
      fillSites: [{ id: 'F1', name: 'Pond', point: { lat: 50.0, lon: 11.001 }, pumperId: 'E2', lift_ft: 8, bayCount: 1 }],
      dumpSites: [{ id: 'U1', name: 'Yard', point: { lat: 50.0, lon: 11.039 }, tankCapacity_gal: 3000, pumperId: 'E1', positionCount: 1 }],
      tenders: [{ id: 't1', tenderId: 'T1' }, { id: 't2', tenderId: 'T2' }],
    },
  })
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}

const newEngine = () => new PlannerEngine(async (hash) => (hash === HASH ? blob : undefined))

describe('a plan with roads', () => {
  it('is answered as by resolving its ways and evaluating it', async () => {
    const bundle = bundleWithRoads()
    const { legs } = resolveLegs(bundle, legFinder(graph, []))
    const engine = newEngine()
    const quick = await engine.begin(bundle)
    expect(quick.legs).toEqual(legs)
    expect(quick.result).toEqual(evaluatePlan({ ...bundle, legs }, { quick: true }))
    expect(quick).toMatchObject({ isQuick: true, issues: [] })
    expect(quick.result.sustainable_gpm).toBeGreaterThan(0)
  })

  it('takes the loaded tender round the bridge, and the empty one over it', async () => {
    const { legs, uses } = await newEngine().begin(bundleWithRoads())
    const legOf = (load: string) => legs.find(({ key }) => key === uses.find((use) => use.apparatusId === 'T1' && use.load === load && use.fromId !== 'ST')?.key)
    const [full, empty] = [legOf('full'), legOf('empty')]
    if (full?.by !== 'routed' || empty?.by !== 'routed') throw new Error('both ways are found over the roads')
    expect(full.roads).toEqual(['West Road', 'Long Lane', 'East Road'])
    expect(empty.roads).toEqual(['East Road', 'Bridge Road', 'West Road'])
  })

  it('a site dragged gives the same ways and figures as one that was put there', async () => {
    const bundle = bundleWithRoads()
    const engine = newEngine()
    await engine.begin(bundle)
    for (const lon of [11.0, 11.004, 11.0063, 11.02, 11.03]) {
      const point = { lat: 50.0001, lon }
      const dragged = engine.drag('F1', point)
      const put = movePlace(bundle, 'F1', point)
      const { legs } = resolveLegs(put, legFinder(graph, []))
      const moved = new Set(legUses(put).filter(({ fromId, toId }) => fromId === 'F1' || toId === 'F1').map(({ key }) => key))
      expect(dragged.legs.map(({ key }) => key).sort()).toEqual([...moved].sort())
      for (const leg of dragged.legs) {
        const other = legs.find(({ key }) => key === leg.key)
        expect(leg.by).toBe(other?.by)
        if (leg.by === 'none' || other?.by !== 'routed') {
          expect(leg).toEqual(other)
          continue
        }
        expect(leg.travel_s).toBeCloseTo(other.travel_s, 6)
        expect(leg.distance_mi).toBeCloseTo(other.distance_mi, 6)
      }
      expect(dragged.result.sustainable_gpm).toEqual(evaluatePlan({ ...put, legs }, { quick: true }).sustainable_gpm)
    }
    expect((await engine.begin(bundle)).result).toEqual((await newEngine().begin(bundle)).result)
  })

  it('follows a road note from the next answer on', async () => {
    const bundle = bundleWithRoads()
    const engine = newEngine()
    const before = await engine.begin(bundle)
    const closed: Bundle = { ...bundle, district: { ...bundle.district, roadNotes: [{ id: 'N', name: 'Flooded', point: { lat: 50.0, lon: 11.02 }, closed: true }] } }
    const after = await engine.begin(closed)
    const roads = (answer: typeof before) => new Set(answer.legs.flatMap((leg) => (leg.by === 'none' ? [] : (leg.roads ?? []))))
    expect(roads(before)).toContain('Bridge Road')
    expect(after.legs.filter((leg) => leg.by !== 'none' && leg.path.some(({ lat, lon }) => lat === 50 && lon > 11.015 && lon < 11.025))).toEqual([])
  })
})

describe('a plan whose roads cannot be had', () => {
  it('is answered without them, saying so, and asks again the next time', async () => {
    let isThere = false
    const engine = new PlannerEngine(async () => {
      if (!isThere) throw new Error('away')
      return blob
    })
    const bundle = bundleWithRoads()
    const answer = await engine.begin(bundle)
    expect(answer.issues).toMatchObject([{ code: 'roads-unreachable', severity: 'warn' }])
    expect(answer.legs).toEqual([])
    expect(answer.result.legs.every(({ isStraight }) => isStraight)).toBe(true)
    isThere = true
    expect((await engine.begin(bundle)).legs.length).toBeGreaterThan(0)
  })

  it('says when the server has none, and when they cannot be read', async () => {
    expect((await new PlannerEngine(async () => undefined).begin(bundleWithRoads())).issues).toMatchObject([{ code: 'roads-missing' }])
    expect((await new PlannerEngine(async () => new Uint8Array(40)).begin(bundleWithRoads())).issues).toMatchObject([{ severity: 'warn' }])
  })

  it('keeps the ways that came with the bundle', async () => {
    const bundle = bundleWithRoads()
    const { legs } = resolveLegs(bundle, legFinder(graph, []))
    const answer = await new PlannerEngine(async () => undefined).begin({ ...bundle, legs })
    expect(answer.legs).toEqual(legs)
  })
})

describe('the service', () => {
  it('leaves out what a newer plan has overtaken', async () => {
    const service = plannerService(async () => blob, () => Promise.resolve())
    const bundle = bundleWithRoads()
    const first = service.begin(bundle)
    const second = service.begin({ ...bundle, plan: { ...bundle.plan, name: 'Mill' } })
    expect(await first).toBeUndefined()
    expect((await second)?.result.planName).toBe('Mill')
    await service.warm('F1')
    expect(await service.explain('sustainable_gpm')).toBeDefined()
    expect((await service.chart())?.tenders).toHaveLength(2)
  })
})
