import type { FeedSpec, ShuttleSpec } from '@/lib/shuttle/spec'
import { fullDepthSpecs } from './full-depth-specs'

/** Where a hose lay may lead. */
export const layEnds = ['dump site', 'fill site', 'fire ground'] as const
export type LayEnd = (typeof layEnds)[number]

/*
 * Layouts of full-depth-specs.ts, a third of them with some of its parts, with one hose lay or two, by a row of pseudo-random
 * numbers of their own. A third of the lays' sources run dry.
 */
export function laySpecs(count: number, ends: readonly LayEnd[], start = 20241101): ShuttleSpec[] {
  let word = start >>> 0
  const next = (): number => { word = (Math.imul(word, 1664525) + 1013904223) >>> 0; return word / 4294967296 }
  const between = (low: number, high: number): number => low + next() * (high - low)
  const lay = (spec: ShuttleSpec, j: number): FeedSpec => {
    const end = ends[Math.floor(next() * ends.length)]
    const at = (sites: readonly unknown[]): number => Math.floor(next() * sites.length)
    return {
      id: `lay-${j}`,
      ...(end === 'dump site' && { dumpIndex: at(spec.dumps) }),
      ...(end === 'fill site' && { fillIndex: at(spec.fills) }),
      ready_s: between(600, 5400),
      flow_gpm: between(100, 700),
      ...(next() < 0.33 && { usable_gal: between(5000, 40000), inflow_gpm: between(0, 150) }),
    }
  }
  return fullDepthSpecs(count, (_, chance) => chance < 0.05, start + 1).map((spec) => ({ ...spec, feeds: Array.from({ length: next() < 0.7 ? 1 : 2 }, (_, j) => lay(spec, j)) }))
}

/*
 * The same layouts with water that several draw on: the first lay and the fill site that is used, now and then another lay too, on one
 * source that holds little for a night.
 */
export function sharedSpecs(count: number, ends: readonly LayEnd[], start = 20241201): ShuttleSpec[] {
  let word = start >>> 0
  const next = (): number => { word = (Math.imul(word, 1664525) + 1013904223) >>> 0; return word / 4294967296 }
  const between = (low: number, high: number): number => low + next() * (high - low)
  return laySpecs(count, ends, start + 1).map((spec) => {
    const water = { sourceId: 'one water', usable_gal: next() < 0.15 ? 0 : between(5000, 60000), inflow_gpm: between(0, 500) }
    const site = spec.tenders[0]?.fillIndex ?? 0
    const more = next() < 0.5
    return {
      ...spec,
      fills: spec.fills.map((fill, f) => (f === site ? { ...fill, ...water } : fill)),
      feeds: (spec.feeds ?? []).map((feed, j) => (j === 0 || more ? { ...feed, ready_s: between(300, 2400), ...water } : feed)),
    }
  })
}
