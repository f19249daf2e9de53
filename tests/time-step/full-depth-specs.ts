import type { LanePass, ShuttleSpec } from '@/lib/shuttle/spec'
import { randomSpecs } from './random-specs'

/** What a layout may have beside vehicles, bays, positions and one tank. */
export const parts = ['bays one after the other', 'positions one after the other', 'turns in bays', 'front tank', 'leak', 'breaks', 'one lane', 'nurse tender'] as const
export type Part = (typeof parts)[number]

/*
 * The layouts of random-specs.ts with more parts put in, by a second row of pseudo-random numbers, so
 * that those layouts stay what they are.
 */
export function fullDepthSpecs(count: number, has: (part: Part, chance: number) => boolean, start = 20240601): ShuttleSpec[] {
  let word = start >>> 0
  const next = (): number => { word = (Math.imul(word, 1664525) + 1013904223) >>> 0; return word / 4294967296 }
  const between = (low: number, high: number): number => low + next() * (high - low)
  const steps = (length: number): number[] => {
    const later = between(60, 600)
    return Array.from({ length }, (_, k) => k * later)
  }
  const withParts = (spec: ShuttleSpec): ShuttleSpec => {
    const own = new Set(parts.filter((part) => has(part, next())))
    const laneCount = own.has('one lane') ? (next() < 0.6 ? 1 : 2) : 0
    // in the order in which they are met on the way to the fill site, never over each other
    const stretches = Array.from({ length: laneCount }, (_, k) => {
      const from = k / laneCount + between(0.05, 0.4) / laneCount
      return { laneIndex: k, fromShare: from, upToShare: from + between(0.05, 0.5) / laneCount }
    })
    const back: LanePass[] = stretches.map(({ laneIndex, fromShare, upToShare }) => ({ laneIndex, fromShare: 1 - upToShare, upToShare: 1 - fromShare })).reverse()
    return {
      ...spec,
      ...(laneCount > 0 && { lanes: stretches.map((_, k) => ({ id: `lane-${k}` })) }),
      fills: spec.fills.map((fill) => ({
        ...fill,
        ...(own.has('bays one after the other') && { bayAfter_s: steps(fill.bayCount) }),
        ...(own.has('turns in bays') && fill.bayCount > 1 && { flowingBayCount: fill.bayCount - 1 }),
      })),
      dumps: spec.dumps.map((dump) => ({
        ...dump,
        ...(own.has('positions one after the other') && { positionAfter_s: steps(dump.positionCount) }),
        ...(own.has('front tank') && { front: { capacity_gal: between(1000, 5000), transfer_gpm: between(400, 1200) } }),
        ...(own.has('nurse tender') && !own.has('front tank') && { startsFull: true, intakeLimit_gpm: between(400, 900) }),
        ...(own.has('leak') && { leak_gpm: between(2, 40) }),
      })),
      tenders: spec.tenders.map((tender) => ({
        ...tender,
        ...(own.has('breaks') && { rest: { after_s: between(2000, 5000), break_s: between(120, 900) } }),
        ...(laneCount > 0 && { lanesToFill: stretches, lanesToDump: back }),
      })),
    }
  }
  return randomSpecs(count, (chance) => 0.2 + 0.45 * chance, start + 7).map(withParts)
}
