import { describe, expect, test } from 'vitest'
import { advise, baselineOf, candidatesOf, effortOfTrial, finish, gainPerEffort, isTrial, noticeable_gpm, planWith, rankTrials, tryCandidate, type Trial } from '@/lib/advise'
import type { Bundle } from '@/lib/plan'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { adviceBundle } from '@/tests/fixtures/advice-bundle'

const asIs = (bundle: Bundle) => bundle
function trialsOf(bundle: Bundle): Trial[] {
  const base = baselineOf(bundle, asIs)
  if (!base) throw new Error('the plan has no answer')
  return candidatesOf(bundle, asIs).map((candidate) => tryCandidate(base, candidate, asIs)).filter(isTrial)
}

describe('a change that is tried', () => {
  test('is compared with the figure that the plan itself shows', () => {
    expect(baselineOf(adviceBundle(), asIs)?.figures.flow_gpm).toBe(evaluatePlan(adviceBundle(), { quick: true }).sustainable_gpm)
  })

  test('gives what the changed plan shows once it is applied', () => {
    const bundle = adviceBundle()
    const trials = trialsOf(bundle)
    expect(trials.length).toBeGreaterThan(15)
    for (const { candidate, after } of trials) {
      const changed = planWith(bundle.plan, candidate.edits)
      if ('code' in changed) throw new Error(changed.code)
      expect(after.flow_gpm).toBe(evaluatePlan({ ...bundle, plan: changed.plan }, { quick: true }).sustainable_gpm)
    }
  })

  // Closed queue without waiting: Q = Σ usable / cycle (NFPA 1142 and the rating bureau's form, named in lib/hydraulics). On
  // 12 miles of road three tenders never meet at one bay, so one more of the same kind adds its own term and no more.
  test('one more tender on a long road adds its load over its round, as the handbook has it', () => {
    const long = adviceBundle(({ district, plan }) => {
      plan.legNotes = plan.legNotes.map((note) => ({ ...note, distance_mi: note.id === 'l1' ? 12 : note.distance_mi }))
      district.apparatus = district.apparatus.map((unit) => (unit.id === 't3' ? { id: 't3', name: 'Tender 3', kind: 'tender', stationId: 'st1', tank_gal: 2000 } : unit)) as typeof district.apparatus
    })
    const [trial] = trialsOf(long).filter(({ candidate }) => candidate.kind === 'tender' && candidate.subjectIds[0] === 't3')
    const result = evaluatePlan(long, { quick: true })
    const [one] = result.tenders
    const share_gpm = (60 * (one?.usable_gal ?? 0)) / (one?.cycle_s ?? 1)
    expect((trial?.after.hauled_gpm ?? 0) - (trial?.before.hauled_gpm ?? 0)).toBeCloseTo(share_gpm, 0)
  })

  test('effort of apparatus holds its crew and its way from dispatch', () => {
    const bundle = adviceBundle()
    const [candidate] = candidatesOf(bundle, asIs).filter(({ kind, subjectIds }) => kind === 'tender' && subjectIds[0] === 't3')
    if (!candidate) throw new Error('the tender is missing')
    const changed = planWith(bundle.plan, candidate.edits)
    if ('code' in changed) throw new Error(changed.code)
    const compiled = compilePlan({ ...bundle, plan: changed.plan })
    expect(effortOfTrial(candidate, compiled)).toEqual({ peopleCount: 2, apparatusCount: 1, time_s: compiled.tenders.find(({ tender }) => tender.id === 't3')?.spec.arrive_s })
  })

  test('a plan that is blocked has no advice', () => {
    expect(finish(advise(adviceBundle(({ plan }) => { plan.tenders = [] }), asIs))).toBeUndefined()
  })

  test('new places are not compared by straight lines beside routed ways', () => {
    const routed = { ...adviceBundle(), legs: compilePlan(adviceBundle()).ways.rows.map(({ use }) => ({ key: use.key, by: 'routed' as const, distance_mi: 2, travel_s: 300, path: [use.ask.from, use.ask.to] })) }
    const base = baselineOf(routed, asIs)
    if (!base) throw new Error('the plan has no answer')
    const moved = candidatesOf(routed, asIs).filter(({ kind }) => kind === 'otherDraftSite').map((candidate) => tryCandidate(base, candidate, asIs))
    expect(moved.length).toBeGreaterThan(0)
    for (const outcome of moved) expect(outcome).toMatchObject({ because: 'roads-unknown' })
  })
})

describe('the order of advice', () => {
  const trials = trialsOf(adviceBundle())

  test('is by gain for each person-minute, or by gain', () => {
    const { helpful } = rankTrials(trials)
    expect(helpful.length).toBeGreaterThan(2)
    for (const [index, trial] of helpful.slice(1).entries()) expect(gainPerEffort(trial)).toBeLessThanOrEqual(gainPerEffort(helpful[index]!))
    const byGain = rankTrials(trials, 'gain').helpful
    for (const [index, trial] of byGain.slice(1).entries()) expect(trial.gain_gpm).toBeLessThanOrEqual(byGain[index]!.gain_gpm)
  })

  test('keeps apart what stands on soft ground or on a guess', () => {
    const { helpful, unproven } = rankTrials(trials)
    expect(unproven.some(({ candidate }) => candidate.subjectIds[0] === 'ds3')).toBe(true)
    expect(helpful.some(({ candidate }) => candidate.subjectIds[0] === 'ds3')).toBe(false)
  })

  test('lists each thing that helps once, and all that was tried and brings nothing, nearest first', () => {
    const { helpful, unproven, idle } = rankTrials(trials)
    const groups = [...helpful, ...unproven].map(({ candidate }) => candidate.group)
    expect(new Set(groups).size).toBe(groups.length)
    expect(idle.map(({ gain_gpm }) => gain_gpm)).toEqual(idle.map(({ gain_gpm }) => gain_gpm).toSorted((a, b) => b - a))
    const gainless = trials.filter((trial) => trial.gain_gpm < noticeable_gpm(trial.before.flow_gpm))
    for (const { candidate } of gainless) expect(idle.map((one) => one.candidate.id), candidate.id).toContain(candidate.id)
    expect(idle.some(({ candidate }) => [...helpful, ...unproven].some((one) => one.candidate.id === candidate.id))).toBe(false)
  })
})
