import { readFileSync } from 'node:fs'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import { decodeRoadGraph } from '@/lib/roads'
import { evaluatePlan, legFinder, resolveLegs } from '@/lib/supply'
import { median, ratio, valueAt } from './support/cost'
import { portoBundle, portoFill } from './support/porto-bundle'

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

const bundle = portoBundle(hash)
const engine = new PlannerEngine(async () => graphBlob)
await engine.begin(bundle)
const step = (frame: number) => ({ lat: portoFill.lat + frame * 2e-5, lon: portoFill.lon + frame * 1e-5 })
engine.drag('f1', step(0))
const dragged = times(FRAMES, (frame) => engine.drag('f1', step(frame + 1)))
const find = legFinder(graph, [])
const anew = times(6, (frame) => {
  const moved = portoBundle(hash, step(frame + 100))
  evaluatePlan({ ...moved, legs: resolveLegs(moved, find).legs })
})
process.stdout.write([
  'Dragging a fill site, 8 tenders, porto-roads',
  `  one answer while dragging    median ${median(dragged).toFixed(1)} ms, 95 % under ${valueAt(dragged, 0.95).toFixed(1)} ms (in the worker)`,
  `  every way anew, whole answer median ${median(anew).toFixed(1)} ms`,
  '',
].join('\n'))

ratio('an answer while dragging against every way anew', median(anew) / median(dragged))

function times(count: number, run: (frame: number) => unknown): number[] {
  return Array.from({ length: count }, (_, frame) => {
    const start = performance.now()
    run(frame)
    return performance.now() - start
  })
}
