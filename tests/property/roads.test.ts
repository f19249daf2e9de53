import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Point } from '@/lib/geo'
import { findRoute, isRoute, oneToAll, routeFromTree, travelMatrix, weighGraph, type RoadGraph, type RoadNoteLike, type RoadWeights } from '@/lib/roads'
import { headOfArc, tailOfArc } from '@/lib/roads/road-graph'
import { graphOf, loaded, placeIn, placeOf, type Town, type TownRestriction, type TownWay } from '../unit/roads/town'

const letters = 'ABCDEFGHI'
const grid = 'ABC\nDEF\nGHI'
const links = ['AB', 'BC', 'DE', 'EF', 'GH', 'HI', 'AD', 'DG', 'BE', 'EH', 'CF', 'FI', 'AE', 'EI']
const tagChoices: Record<string, string>[] = [
  { highway: 'tertiary' }, { highway: 'residential' }, { highway: 'track' }, { highway: 'tertiary', oneway: 'yes' }, { highway: 'tertiary', oneway: '-1' },
  { highway: 'secondary', maxweight: '10' }, { highway: 'service', access: 'private' }, { highway: 'tertiary', motor_vehicle: 'no' },
]
type Run = { ways: number[]; isOnly: boolean }

const towns = fc
  .record({
    tags: fc.array(fc.constantFrom(...tagChoices), { minLength: links.length, maxLength: links.length }),
    isThere: fc.array(fc.nat(4).map((dice) => dice > 0), { minLength: links.length, maxLength: links.length }),
    runs: fc.array(fc.record({ start: fc.nat(200), turns: fc.array(fc.nat(6), { minLength: 1, maxLength: 3 }), isOnly: fc.boolean() }), { maxLength: 5 }),
    barrier: fc.option(fc.constantFrom(...letters), { nil: undefined }),
  })
  .map(({ tags, isThere, runs, barrier }) => {
    const ways: TownWay[] = links.flatMap((through, i) => (isThere[i] || i === 0 ? [{ id: i + 1, through, tags: tags[i] ?? {} }] : []))
    const wanted = runs.flatMap(({ start, turns, isOnly }): Run[] => {
      const run = walk(ways, start, turns)
      return run.length > 1 ? [{ ways: run, isOnly: isOnly && run.length === 2 }] : []
    })
    const restrictions = wanted.map(({ ways: run, isOnly }): TownRestriction => {
      const [from, ...rest] = run
      const to = rest.pop() ?? 0
      return { from: from ?? 0, via: rest.length > 0 ? rest : shared(ways, from ?? 0, to), to, kind: isOnly ? 'only_straight_on' : 'no_straight_on' }
    })
    return { town: { grid, ways, restrictions, nodeTags: barrier ? { [barrier]: { barrier: 'bollard' } } : {} } as Town, runs: wanted }
  })

/** Ways that follow one another from end to end, never back over the same one. */
function walk(ways: readonly TownWay[], start: number, turns: readonly number[]): number[] {
  const first = ways[start % ways.length]
  if (!first) return []
  const run = [first.id]
  let at = first.through[start % 2 === 0 ? 1 : 0]
  for (const turn of turns) {
    const onward = ways.filter(({ id, through }) => through.includes(at ?? '?') && !run.includes(id))
    const next = onward[turn % Math.max(1, onward.length)]
    if (!next) break
    run.push(next.id)
    at = [...next.through].find((letter) => letter !== at)
  }
  return run
}

const shared = (ways: readonly TownWay[], a: number, b: number): string => {
  const through = (id: number): string => ways.find((way) => way.id === id)?.through ?? ''
  return [...through(a)].find((letter) => through(b).includes(letter)) ?? '?'
}

/** Where a run begins and where it leads: between these a restriction is most likely to matter. */
function endsOfRun({ ways }: Town, run: Run | undefined): [string, string] | undefined {
  if (!run) return undefined
  const [first = 0, second = 0] = run.ways, [before = 0, last = 0] = run.ways.slice(-2)
  const other = (id: number, next: number): string => [...(ways.find((way) => way.id === id)?.through ?? '')].find((letter) => letter !== shared(ways, id, next)) ?? '?'
  return [other(first, second), other(last, before)]
}

const nodeAt = (graph: RoadGraph, { lat, lon }: Point): number =>
  [...graph.nodeLatE7.keys()].find((node) => Math.abs((graph.nodeLatE7[node] ?? 0) / 1e7 - lat) < 1e-6 && Math.abs((graph.nodeLonE7[node] ?? 0) / 1e7 - lon) < 1e-6) ?? -1

/**
 * Quickest time by plain search over the last four arcs driven, with each forbidden run
 * looked for as it is written: slow, and nothing like the tables of the graph.
 */
function slowly(graph: RoadGraph, weights: RoadWeights, runs: readonly Run[], from: number, to: number): number {
  const wayOf = (arc: number): number => graph.roadId[graph.edgeRoad[arc >>> 1] ?? 0] ?? 0
  const isOpen = (arc: number): boolean => (weights.drive_s[arc] ?? Infinity) < Infinity
  const out = (node: number): number[] => [...weights.drive_s.keys()].filter((arc) => tailOfArc(graph, arc) === node && isOpen(arc))
  const isBanned = (history: readonly number[], next: number): boolean => {
    const driven = [...history.map(wayOf), wayOf(next)]
    const binding = runs.filter(({ ways }) => {
      const before = ways.slice(0, -1), last = ways[ways.length - 1]
      const tail = driven.slice(0, -1).slice(-before.length)
      if (tail.length < before.length || tail.some((way, i) => way !== before[i])) return false
      // A run over one node binds at that node only.
      if (ways.length === 2) {
        const node = tailOfArc(graph, next)
        const meets = [...weights.drive_s.keys()].some((arc) => tailOfArc(graph, arc) === node && wayOf(arc) === last)
        if (!meets) return false
      }
      return true
    })
    const way = driven[driven.length - 1]
    const isOnward = ({ ways }: Run): boolean => ways[ways.length - 1] === way
    // Of several only-turns from one road, each is allowed.
    const onlys = binding.filter(({ isOnly }) => isOnly)
    return binding.some((run) => !run.isOnly && isOnward(run)) || (onlys.length > 0 && !onlys.some(isOnward))
  }
  const best = new Map<string, number>()
  const open: { history: number[]; cost_s: number }[] = out(from).map((arc) => ({ history: [arc], cost_s: weights.arc_s[arc] ?? NaN }))
  let found_s = from === to ? 0 : Infinity
  while (open.length > 0) {
    open.sort((a, b) => b.cost_s - a.cost_s)
    const { history, cost_s } = open.pop() ?? { history: [], cost_s: Infinity }
    const key = history.join(' ')
    if (cost_s >= (best.get(key) ?? Infinity) || cost_s >= found_s) continue
    best.set(key, cost_s)
    const arc = history[history.length - 1] ?? 0
    const node = headOfArc(graph, arc)
    if (node === to) found_s = Math.min(found_s, cost_s - (graph.arcDelay_s[arc] ?? 0))
    const onward = out(node)
    for (const next of onward) {
      const isBack = next === (arc ^ 1)
      if (isBack ? onward.length > 1 && !weights.isNodeShut[node] : weights.isNodeShut[node]) continue
      if (!isBanned(history, next)) open.push({ history: [...history, next].slice(-4), cost_s: cost_s + (weights.arc_s[next] ?? NaN) })
    }
  }
  return found_s
}

const ends = fc.tuple(fc.constantFrom(...letters), fc.constantFrom(...letters))

test('the route found is the quickest that keeps every rule, restrictions over whole roads included', async () => {
  let foundCount = 0, changedCount = 0
  await fc.assert(
    fc.asyncProperty(towns, ends, fc.nat(5), async ({ town, runs }, anywhere, pick) => {
      const [from, to] = endsOfRun(town, runs[pick]) ?? anywhere
      const graph = await graphOf(town)
      const weights = weighGraph(graph, loaded)
      const a = nodeAt(graph, placeOf(town, from)), b = nodeAt(graph, placeOf(town, to))
      if (a < 0 || b < 0 || weights.isNodeShut[a] || weights.isNodeShut[b]) return
      const found = findRoute(graph, weights, placeOf(town, from), placeOf(town, to))
      if (!isRoute(found) && found.code === 'route-off-network') return
      const expected_s = slowly(graph, weights, runs, a, b)
      if (isRoute(found)) {
        foundCount++
        if (slowly(graph, weights, [], a, b) < expected_s - 1e-6) changedCount++
        expect(found.drive_s + found.wait_s).toBeCloseTo(expected_s, 6)
      } else expect(expected_s).toBe(Infinity)
    }),
    { numRuns: 600, seed: 20 },
  )
  expect(foundCount).toBeGreaterThan(250)
  // Routes that a restriction lengthens must be among them.
  expect(changedCount).toBeGreaterThan(8)
})

test('a tree gives the same route as a search, from and to, at junctions and between them', async () => {
  await fc.assert(
    fc.asyncProperty(towns, fc.constantFrom(...links), fc.constantFrom(...links, ...letters), async ({ town }, fixed, other) => {
      const graph = await graphOf(town)
      const weights = weighGraph(graph, loaded)
      const a = placeIn(town, fixed), b = placeIn(town, other)
      const from = oneToAll(graph, weights, a, 'from', 1e6), to = oneToAll(graph, weights, a, 'to', 1e6)
      if ('code' in from || 'code' in to) return
      const searched = [findRoute(graph, weights, a, b, [], { reach_ft: 1e6 }), findRoute(graph, weights, b, a, [], { reach_ft: 1e6 })]
      const grown = [routeFromTree(from, b, 1e6), routeFromTree(to, b, 1e6)]
      grown.forEach((route, i) => {
        const same = searched[i]
        if (!same) throw new Error('nothing to compare with')
        expect(isRoute(route)).toBe(isRoute(same))
        if (isRoute(route) && isRoute(same)) expect(route.travel_s).toBeCloseTo(same.travel_s, 6)
      })
    }),
    { numRuns: 150, seed: 21 },
  )
})

test('closing a road never makes a route quicker, and a heavier vehicle is never quicker', async () => {
  await fc.assert(
    fc.asyncProperty(towns, ends, fc.constantFrom(...links), async ({ town }, [from, to], closed) => {
      const graph = await graphOf(town)
      const note: RoadNoteLike = { id: 'n', point: placeIn(town, closed), closed: true }
      const time = (gross_lb: number, notes: RoadNoteLike[]): number => {
        const found = findRoute(graph, weighGraph(graph, { ...loaded, gross_lb }, notes), placeOf(town, from), placeOf(town, to))
        return isRoute(found) ? found.travel_s : Infinity
      }
      // A closed road may move the nearest usable road elsewhere: then the two routes have different ends.
      const gaps = [[], [note]].map((notes) => findRoute(graph, weighGraph(graph, loaded, notes), placeOf(town, from), placeOf(town, to))).map((found) => (isRoute(found) ? found.fromGap_ft + found.toGap_ft : NaN))
      if (gaps.every((gap) => gap < 10)) expect(time(46_000, [note])).toBeGreaterThanOrEqual(time(46_000, []) - 1e-6)
      expect(time(46_000, [])).toBeGreaterThanOrEqual(time(20_000, []) - 1e-6)
    }),
    { numRuns: 80, seed: 22 },
  )
})

test('a route over a point on the way is never quicker than without', async () => {
  await fc.assert(
    fc.asyncProperty(towns, ends, fc.constantFrom(...links), async ({ town }, [from, to], via) => {
      const graph = await graphOf(town)
      const weights = weighGraph(graph, loaded)
      const direct = findRoute(graph, weights, placeOf(town, from), placeOf(town, to))
      const over = findRoute(graph, weights, placeOf(town, from), placeOf(town, to), [placeIn(town, via)])
      if (isRoute(over)) expect(isRoute(direct) ? direct.travel_s : Infinity).toBeLessThanOrEqual(over.travel_s + 1e-6)
    }),
    { numRuns: 80, seed: 23 },
  )
})

test('a matrix of times equals the routes one by one', async () => {
  await fc.assert(
    fc.asyncProperty(towns, fc.array(fc.constantFrom(...letters), { minLength: 2, maxLength: 3 }), async ({ town }, places) => {
      const graph = await graphOf(town)
      const weights = weighGraph(graph, loaded)
      const points = places.map((letter) => placeOf(town, letter))
      travelMatrix(graph, weights, points, points).forEach((row, i) => row.forEach((time_s, j) => {
        const found = findRoute(graph, weights, points[i] ?? points[0]!, points[j] ?? points[0]!)
        if (time_s === undefined) expect(isRoute(found)).toBe(false)
        else expect(time_s).toBeCloseTo(isRoute(found) ? found.travel_s : NaN, 6)
      }))
    }),
    { numRuns: 40, seed: 24 },
  )
})
