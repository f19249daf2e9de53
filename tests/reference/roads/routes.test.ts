import createGraph from 'ngraph.graph'
import ngraphPath from 'ngraph.path'
import { describe, expect, test } from 'vitest'
import type { OsmExtract } from '@/lib/osm'
import { findRoute, isRoute, oneToAll, routeFromTree, weighGraph, type RoadGraph, type RoadWeights } from '@/lib/roads'
import { headOfArc, tailOfArc } from '@/lib/roads/road-graph'
import { loaded } from '../../unit/roads/town'
import { extractNamed, graphNamed, nodePairs, plainGraph, pointOfNode } from './extracts'

/** Times agree to the rounding of sums of a few hundred terms. */
const TOLERANCE_S = 1e-6

type Weighted = { weight: number }

/** The same arcs and weights in ngraph.graph, a general-purpose graph library. */
function generalGraph(graph: RoadGraph, weights: RoadWeights) {
  const general = createGraph<undefined, Weighted>()
  for (let arc = 0; arc < weights.arc_s.length; arc++) {
    const weight = weights.arc_s[arc] ?? Infinity
    const tail = tailOfArc(graph, arc), head = headOfArc(graph, arc)
    if (weight === Infinity || weights.isNodeShut[tail]) continue
    const known = general.getLink(tail, head)
    if (!known || known.data.weight > weight) general.addLink(tail, head, { weight })
  }
  return general
}

function timeOf(general: ReturnType<typeof generalGraph>, path: { id: string | number }[]): number {
  let total_s = 0
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]]
    total_s += (a && b && general.getLink(a.id, b.id)?.data.weight) ?? NaN
  }
  return total_s
}

describe.each([['north-bayreuth.osm.pbf', 120], ['porto-roads.osm.pbf', 10]])('%s', (file, count) => {
  test(`${count} quickest routes take as long as those of ngraph.path, without restrictions`, async () => {
    const graph = plainGraph(await graphNamed(file))
    const weights = weighGraph(graph, loaded)
    const general = generalGraph(graph, weights)
    const finder = ngraphPath.aStar(general, { oriented: true, distance: (_from, _to, link) => link.data.weight })
    let routeCount = 0
    for (const [from, to] of nodePairs(graph, count)) {
      if (!general.getNode(from) || !general.getNode(to)) continue
      const path = finder.find(from, to).reverse()
      const ours = findRoute(graph, weights, pointOfNode(graph, from), pointOfNode(graph, to))
      if (path.length === 0) expect(isRoute(ours)).toBe(false)
      else {
        expect(Math.abs((isRoute(ours) ? ours.drive_s : NaN) - timeOf(general, path))).toBeLessThanOrEqual(TOLERANCE_S)
        routeCount++
      }
    }
    expect(routeCount).toBeGreaterThan(count * 0.7)
  })
})

/** Pairs of arcs that may not follow one another, read straight from the relations over one node. */
function forbiddenTurns(extract: OsmExtract, graph: RoadGraph): Set<string> {
  const forbidden = new Set<string>()
  const indexOfId = new Map([...extract.nodeId].map((id, i) => [id, i]))
  const arcs = [...new Array<undefined>(graph.edgeFrom.length * 2).keys()]
  const wayIdOf = (arc: number): number => graph.roadId[graph.edgeRoad[arc >>> 1] ?? 0] ?? 0
  for (const { tags, members } of extract.relations) {
    const kind = tags['restriction'] ?? ''
    const via = members.find(({ kind: what, role }) => what === 'node' && role === 'via')
    const from = members.find(({ role }) => role === 'from'), to = members.find(({ role }) => role === 'to')
    const index = indexOfId.get(via?.id ?? NaN)
    if (index === undefined || !from || !to) continue
    const isHere = (node: number): boolean => graph.nodeLatE7[node] === extract.nodeLatE7[index] && graph.nodeLonE7[node] === extract.nodeLonE7[index]
    const entering = arcs.filter((arc) => wayIdOf(arc) === from.id && isHere(headOfArc(graph, arc)))
    const leaving = arcs.filter((arc) => isHere(tailOfArc(graph, arc)))
    if (!leaving.some((arc) => wayIdOf(arc) === to.id)) continue
    for (const a of entering) {
      for (const b of leaving) if (kind.startsWith('only_') ? wayIdOf(b) !== to.id : wayIdOf(b) === to.id) forbidden.add(`${a} ${b}`)
    }
  }
  return forbidden
}

test('with turn restrictions, routes take as long as ngraph.path finds over the graph of turns', async () => {
  const extract = await extractNamed('north-bayreuth.osm.pbf')
  const whole = await graphNamed('north-bayreuth.osm.pbf')
  const graph: RoadGraph = { ...whole, arcDelay_s: new Float32Array(whole.arcDelay_s.length) }
  const weights = weighGraph(graph, loaded)
  const forbidden = forbiddenTurns(extract, graph)
  expect(forbidden.size).toBeGreaterThan(40)
  const waysOut = (node: number): number[] => [...graph.outArc.subarray(graph.outStart[node], graph.outStart[node + 1])].filter((arc) => (weights.drive_s[arc] ?? Infinity) < Infinity)
  // Nodes of the graph of turns are arcs; a link weighs what the next arc takes.
  const turns = createGraph<undefined, Weighted>()
  for (let arc = 0; arc < weights.drive_s.length; arc++) {
    if (weights.drive_s[arc] === Infinity) continue
    const node = headOfArc(graph, arc)
    const out = waysOut(node)
    for (const next of out) {
      const isBack = next === (arc ^ 1)
      if (isBack ? out.length > 1 && !weights.isNodeShut[node] : weights.isNodeShut[node]) continue
      if (!forbidden.has(`${arc} ${next}`)) turns.addLink(arc, next, { weight: weights.drive_s[next] ?? NaN })
    }
  }
  let comparedCount = 0, changedCount = 0
  const free = weighGraph(plainGraph(graph), loaded)
  const unrestricted = plainGraph(graph)
  // Starts and ends around the restrictions, where they bind.
  const arcsNear = [...forbidden].flatMap((pair) => pair.split(' ').map(Number))
  const pairs = arcsNear.flatMap((arc, i): [number, number][] => [[tailOfArc(graph, arc), headOfArc(graph, arcsNear[i + 1] ?? arc)], ...nodePairs(graph, 1).map(([, to]): [number, number] => [tailOfArc(graph, arc), to])])
  for (const [from, to] of [...pairs.slice(0, 90), ...nodePairs(graph, 30)]) {
    if (from === to || weights.isNodeShut[from] || weights.isNodeShut[to]) continue
    const starts = waysOut(from)
    const entering = [...graph.outArc.subarray(graph.outStart[to], graph.outStart[to + 1])].map((arc) => arc ^ 1).filter((arc) => weights.drive_s[arc] !== Infinity)
    // One more node before all starts, one more after all arrivals.
    for (const arc of starts) turns.addLink('start', arc, { weight: weights.drive_s[arc] ?? NaN })
    for (const arc of entering) turns.addLink(arc, 'end', { weight: 0 })
    const path = turns.getNode('start') && turns.getNode('end')
      ? ngraphPath.aStar(turns, { oriented: true, distance: (_from, _to, link) => link.data.weight }).find('start', 'end').reverse()
      : []
    const expected_s = path.length > 0 ? timeOf(turns, path) : Infinity
    turns.removeNode('start')
    turns.removeNode('end')
    const ours = findRoute(graph, weights, pointOfNode(graph, from), pointOfNode(graph, to))
    const ours_s = isRoute(ours) ? ours.drive_s : Infinity
    expect(ours_s === expected_s || Math.abs(ours_s - expected_s) <= TOLERANCE_S).toBe(true)
    comparedCount++
    const loose = findRoute(unrestricted, free, pointOfNode(graph, from), pointOfNode(graph, to))
    if (isRoute(loose) && loose.drive_s < ours_s - 0.5) changedCount++
  }
  expect(comparedCount).toBeGreaterThan(60)
  // The comparison must include routes that restrictions lengthen.
  expect(changedCount).toBeGreaterThan(3)
})

test('routes from a one-to-all tree equal searched ones, in both directions', async () => {
  const graph = await graphNamed('north-bayreuth.osm.pbf')
  const weights = weighGraph(graph, loaded)
  const pairs = nodePairs(graph, 40)
  const { lat, lon } = pointOfNode(graph, pairs[3]?.[0] ?? 0)
  const fixed = { lat: lat + 0.0003, lon: lon - 0.0002 }
  const from = oneToAll(graph, weights, fixed, 'from'), to = oneToAll(graph, weights, fixed, 'to')
  if ('code' in from || 'code' in to) throw new Error('the fixed place is off the network')
  for (const [node] of pairs) {
    const place = { lat: pointOfNode(graph, node).lat + 0.0002, lon: pointOfNode(graph, node).lon + 0.0001 }
    for (const [searched, grown] of [[findRoute(graph, weights, fixed, place), routeFromTree(from, place)], [findRoute(graph, weights, place, fixed), routeFromTree(to, place)]] as const) {
      if (!isRoute(searched)) expect(grown).toEqual(searched)
      else expect(Math.abs((isRoute(grown) ? grown.travel_s : NaN) - searched.travel_s)).toBeLessThanOrEqual(TOLERANCE_S)
    }
  }
})
