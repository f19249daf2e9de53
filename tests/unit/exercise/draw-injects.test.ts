import { describe, expect, it } from 'vitest'
import { difficulties, drawInjects, injectFrom, isSession, playSession, possibleTroubles, startSession, troubleWeight, type Session } from '@/lib/exercise'
import { demoBundle } from './demo-bundle'

const bundles = (['gander-hill', 'yarrow-bank', 'school'] as const).map(demoBundle)

describe('troubles that a plan could meet', () => {
  it('strike only what is there, and each of them can come about', () => {
    for (const bundle of bundles) {
      const ids = new Set([bundle.plan.id, ...[...bundle.district.apparatus, ...bundle.plan.fillSites, ...bundle.plan.dumpSites, ...(bundle.plan.hoseLays ?? [])].map(({ id }) => id)] as string[])
      const all = possibleTroubles(bundle)
      expect(all.length).toBeGreaterThan(5)
      for (const [i, what] of all.entries()) {
        for (const id of what.subjectIds) expect(ids).toContain(id)
        const refused: unknown[] = []
        const session = startSession(bundle, [injectFrom(what, `i${i}`, what.trouble, (what.when.from_s + what.when.to_s) / 2)])
        if (!isSession(session)) throw new Error(JSON.stringify(session))
        const end = playSession(session, what.when.to_s + 60, (one) => refused.push(...(one.refused ?? [])))
        expect(refused).toEqual([])
        expect(end.facts).toHaveLength(1)
      }
    }
  })

  it('are none where the plan cannot be played', () => {
    const bundle = bundles[0]!
    expect(possibleTroubles({ ...bundle, plan: { ...bundle.plan, tenders: [] } })).toEqual([])
  })
})

describe('a drawn set', () => {
  const sets = difficulties.flatMap((difficulty) => bundles.flatMap((bundle) => Array.from({ length: 30 }, (_, seed) => ({ difficulty, bundle, drawn: drawInjects(bundle, seed, difficulty) }))))
  const limits = { easy: { weight: 3, gap_s: 900 }, middling: { weight: 6, gap_s: 600 }, hard: { weight: 10, gap_s: 300 } }

  it('bears its difficulty and keeps time between troubles, for any seed', () => {
    for (const { difficulty, drawn } of sets) {
      expect(drawn.length).toBeGreaterThan(0)
      expect(drawn.reduce((sum, { what }) => sum + troubleWeight[what.trouble], 0)).toBeLessThanOrEqual(limits[difficulty].weight)
      drawn.forEach(({ at_s, what }, i) => {
        expect(at_s).toBeGreaterThanOrEqual(what.when.from_s)
        expect(at_s).toBeLessThanOrEqual(what.when.to_s)
        if (i > 0) expect(at_s - drawn[i - 1]!.at_s).toBeGreaterThanOrEqual(limits[difficulty].gap_s)
      })
    }
  })

  it('strikes nothing twice, and no kind of trouble comes twice', () => {
    for (const { drawn } of sets) {
      const struck = drawn.flatMap(({ what }) => what.subjectIds)
      expect(new Set(struck).size).toBe(struck.length)
      expect(new Set(drawn.map(({ what }) => what.trouble)).size).toBe(drawn.length)
    }
  })

  it('is the same for the same seed, and others for others', () => {
    const bundle = bundles[2]!
    expect(drawInjects(bundle, 7, 'hard')).toEqual(drawInjects(bundle, 7, 'hard'))
    expect(new Set(Array.from({ length: 20 }, (_, seed) => JSON.stringify(drawInjects(bundle, seed, 'hard')))).size).toBeGreaterThan(15)
  })

  it('a harder one is heavier on average', () => {
    const mean = (difficulty: string) => {
      const of = sets.filter((one) => one.difficulty === difficulty)
      return of.reduce((sum, { drawn }) => sum + drawn.reduce((total, { what }) => total + troubleWeight[what.trouble], 0), 0) / of.length
    }
    expect(mean('middling')).toBeGreaterThan(mean('easy'))
    expect(mean('hard')).toBeGreaterThan(mean('middling'))
  })

  it('can be played to the end', () => {
    for (const { bundle, drawn } of sets.filter((_, i) => i % 10 === 0)) {
      const session = startSession(bundle, drawn.map(({ what, at_s }, i) => injectFrom(what, `i${i}`, what.trouble, at_s))) as Session
      expect(playSession(session, 10_800).facts.length).toBeGreaterThan(0)
    }
  })
})
