import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import createGraph from 'ngraph.graph'
import ngraphPath from 'ngraph.path'
import { gunzip, inflate } from '../../app/_worker/decompress'
import { distanceM, type Point } from '../../lib/geo'
import { readOsm, type OsmExtract } from '../../lib/osm'
import { buildRoadGraph, decodeRoadGraph, encodeRoadGraph, findRoute, isRoute, oneToAll, routeFromTree, weighGraph, type RoadGraph, type RoadWeights } from '../../lib/roads'
import { headOfArc, tailOfArc } from '../../lib/roads/road-graph'
import { line, median, ratio } from './support/cost'

const timed = <T>(run: () => T): { result: T; ms: number } => {
  const start = performance.now()
  const result = run()
  return { result, ms: performance.now() - start }
}

async function read(name: string): Promise<OsmExtract> {
  const bytes = new Uint8Array(readFileSync(fileURLToPath(new URL(`../data/${name}`, import.meta.url))))
  const extract = await readOsm(bytes, { inflate, gunzip })
  if ('code' in extract) throw new Error(JSON.stringify(extract))
  return extract
}

/** Pairs all over the main component. */
function pairsOf(graph: RoadGraph, count: number): [number, number][] {
  const main = graph.componentSize.indexOf(graph.componentSize.reduce((most, size) => Math.max(most, size), 0))
  const nodes = [...graph.component.keys()].filter((node) => graph.component[node] === main && graph.nodeKind[node] === 0)
  return Array.from({ length: count }, (_, i): [number, number] => [nodes[(i * 7919) % nodes.length] ?? 0, nodes[(i * 104_729 + 31) % nodes.length] ?? 0])
}

const pointOf = (graph: RoadGraph, node: number): Point => ({ lat: (graph.nodeLatE7[node] ?? 0) / 1e7, lon: (graph.nodeLonE7[node] ?? 0) / 1e7 })

type Data = { weight: number }

/** The fastest finder of ngraph.path, with the best plain heuristic: straight line at the quickest speed of any road. */
function generalFinder(graph: RoadGraph, weights: RoadWeights) {
  const general = createGraph<Point, Data>()
  let quickest_ms = 0
  for (let node = 0; node < graph.nodeLatE7.length; node++) general.addNode(node, pointOf(graph, node))
  for (let arc = 0; arc < weights.arc_s.length; arc++) {
    const weight = weights.arc_s[arc] ?? Infinity
    const tail = tailOfArc(graph, arc), head = headOfArc(graph, arc)
    if (weight === Infinity || weights.isNodeShut[tail]) continue
    const known = general.getLink(tail, head)
    if (!known || known.data.weight > weight) general.addLink(tail, head, { weight })
    if (weight > 0) quickest_ms = Math.max(quickest_ms, distanceM(pointOf(graph, tail), pointOf(graph, head)) / weight)
  }
  return ngraphPath.nba(general, {
    oriented: true,
    distance: (_from, _to, link) => link.data.weight,
    heuristic: (from, to) => distanceM(from.data, to.data) / quickest_ms,
  })
}

/** Rounds of ours and theirs by turns, so both meet the same machine. */
function compareRoutes(name: string, graph: RoadGraph, weights: RoadWeights, count: number): void {
  const finder = generalFinder(graph, weights)
  const pairs = pairsOf(graph, count)
  // Both run warm: the first calls of a process measure the compiler.
  for (const [from, to] of pairsOf(graph, Math.min(100, count / 3))) {
    findRoute(graph, weights, pointOf(graph, from), pointOf(graph, to))
    finder.find(from, to)
  }
  const ours: number[] = [], theirs: number[] = []
  let foundCount = 0
  for (const [from, to] of pairs) {
    const a = timed(() => findRoute(graph, weights, pointOf(graph, from), pointOf(graph, to)))
    const b = timed(() => finder.find(from, to))
    ours.push(a.ms)
    theirs.push(b.ms)
    if (isRoute(a.result)) foundCount++
  }
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
  line('routes found', foundCount, `of ${count}`)
  line('routes a second, whole answer (places, path, steps, cautions)', (1000 * count) / sum(ours), '1/s')
  line('routes a second, ngraph.path nba, list of nodes', (1000 * count) / sum(theirs), '1/s')
  ratio(`routes of ${name}, whole answer, against ngraph.path nba`, sum(theirs) / sum(ours))
  ratio('the same by medians', median(theirs) / median(ours))
}

async function main(): Promise<void> {
  for (const name of ['north-bayreuth.osm.pbf', 'porto-roads.osm.pbf']) {
    console.log(`\n${name}`)
    const start = performance.now()
    const extract = await read(name)
    const read_ms = performance.now() - start
    const built = timed(() => buildRoadGraph(extract).graph)
    const graph = built.result
    line('nodes in the file', extract.nodeId.length, '')
    line('junctions', graph.nodeLatE7.length, '')
    line('arcs', graph.edgeFrom.length * 2, '')
    line('read', read_ms, 'ms')
    line('build', built.ms, 'ms')
    line('file to routable graph, a 100,000 nodes', ((read_ms + built.ms) / extract.nodeId.length) * 100, 's')
    const blob = timed(() => encodeRoadGraph(graph))
    line('graph blob', blob.result.length / 1e6, 'MB')
    line('load the blob, all checks and indexes', timed(() => decodeRoadGraph(blob.result)).ms, 'ms')
    const weigh = [1, 2, 3, 4, 5].map(() => timed(() => weighGraph(graph, { gross_lb: 46_000, height_ft: 10.5, width_ft: 8.2 })))
    line('weigh the graph for a vehicle', median(weigh.map(({ ms }) => ms)), 'ms')
    const weights = weigh[0]?.result
    if (!weights) continue
    const pairs = pairsOf(graph, 40)
    const trees = pairs.slice(0, 9).map(([node], i) => timed(() => oneToAll(graph, weights, pointOf(graph, node), i % 2 ? 'to' : 'from')))
    line('one to all, restrictions kept', median(trees.map(({ ms }) => ms)), 'ms')
    const tree = trees[8]?.result
    if (tree && !('code' in tree)) line('route from a tree', median(pairs.map(([, to]) => timed(() => routeFromTree(tree, pointOf(graph, to))).ms)), 'ms')
    const first = pairs[1] ?? [0, 0]
    line('first route on a graph (makes its landmarks)', timed(() => findRoute(graph, weights, pointOf(graph, first[0]), pointOf(graph, first[1]))).ms, 'ms')
    compareRoutes(name, graph, weights, name.startsWith('porto') ? 150 : 300)
  }
}

void main()
