import { readFileSync } from 'node:fs'
import { importWithNode } from '@/app/_cli/import-with-node'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { evaluatePlan, legFinder, resolveLegs } from '@/lib/supply'

/**
 * Dragging a site: how long one answer takes, with the ways from trees kept of the fixed ends,
 * against finding every way anew and answering whole. Eight tenders on the roads of a city.
 */
const FRAMES = 60
const bytes = readFileSync(new URL('../data/porto-roads.osm.pbf', import.meta.url))
const { graphBlob } = await importWithNode(new Uint8Array(bytes), 'porto-roads.osm.pbf')
const hash = 'a'.repeat(64)
const graph = decodeRoadGraph(graphBlob)
if ('code' in graph) throw new Error(graph.code)

const bundle = bundleOn({ lat: 41.16, lon: -8.62 }, { lat: 41.17, lon: -8.6 })
const engine = new PlannerEngine(async () => graphBlob)
await engine.begin(bundle)
const step = (frame: number) => ({ lat: 41.16 + frame * 2e-5, lon: -8.62 + frame * 1e-5 })
engine.drag('f1', step(0))
const dragged = times(FRAMES, (frame) => engine.drag('f1', step(frame + 1)))
const find = legFinder(graph, [])
const anew = times(6, (frame) => {
  const moved = bundleOn(step(frame + 100), { lat: 41.17, lon: -8.6 })
  evaluatePlan({ ...moved, legs: resolveLegs(moved, find).legs }, { withoutMeasure: true })
})
const median = (values: number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0
const late = (values: number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.95)] ?? 0
process.stdout.write([
  'Dragging a fill site, 8 tenders, porto-roads',
  `  one answer while dragging    median ${median(dragged).toFixed(1)} ms, 95 % under ${late(dragged).toFixed(1)} ms (in the worker)`,
  `  every way anew, whole answer median ${median(anew).toFixed(1)} ms`,
  `  ratio                        ${(median(anew) / median(dragged)).toFixed(1)} times as quick`,
  '',
].join('\n'))

function times(count: number, run: (frame: number) => unknown): number[] {
  return Array.from({ length: count }, (_, frame) => {
    const start = performance.now()
    run(frame)
    return performance.now() - start
  })
}

function bundleOn(fill: { lat: number; lon: number }, dump: { lat: number; lon: number }): Bundle {
  const read = readBundle({
    format: 'millrace-plan', version: 1, legs: [],
    district: {
      id: 'd', name: 'Bench', roads: { hash, name: 'porto', attribution: '© OpenStreetMap contributors, ODbL 1.0', importedOn: '2026-11-25' },
      stations: [{ id: 's', name: 'Station', point: { lat: 41.165, lon: -8.61 } }],
      sources: [], draftSites: [], hazards: [], roadNotes: [],
      apparatus: [
        { id: 'p1', name: 'Pumper', kind: 'pumper', stationId: 's', rated_gpm: 1250, full_lb: 40000 },
        ...Array.from({ length: 8 }, (_, i) => ({ id: `t${i}`, name: `Tender ${i}`, kind: 'tender', stationId: 's', tank_gal: 1500 + 250 * i, full_lb: 30000 + 3000 * i, empty_lb: 18000 + 1500 * i })),
      ],
      equipment: [],
    },
    plan: {
      id: 'p', name: 'Bench', districtId: 'd', demand: [{ id: 'x', from_s: 0, flow_gpm: 500 }],
      fillSites: [{ id: 'f1', name: 'Fill', point: fill, pumperId: 'p1', lift_ft: 10 }],
      dumpSites: [{ id: 'u1', name: 'Dump', point: dump, tankCapacity_gal: 4000, positionCount: 2 }],
      tenders: Array.from({ length: 8 }, (_, i) => ({ id: `k${i}`, tenderId: `t${i}` })),
      legNotes: [],
    },
  })
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}
