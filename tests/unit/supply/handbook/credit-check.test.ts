import { describe, expect, it } from 'vitest'
import { compilePlan, creditCheck, creditLines, creditRules, type CreditLineCode } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

type Changes = Parameters<typeof smallBundle>[0]

const check = (changes: Changes = {}, today?: string) => creditCheck(compilePlan(smallBundle(changes)), today ? { today } : {})
const line = (code: CreditLineCode, changes: Changes = {}, today?: string) => {
  const found = check(changes, today).lines.find((one) => one.code === code)
  if (!found) throw new Error(`no line ${code}`)
  return found
}

/** Engine 3 comes first with enough to bridge the set-up; Engine 2 drafts; four tenders: 250 gpm is there all the time. */
const strong: Changes = {
  'district.apparatus': [
    { id: 'p1', name: 'Engine 1', kind: 'pumper', stationId: 'st1', rated_gpm: 1000, tank_gal: 1000, curvePoints: [{ netPressure_psi: 150, flow_gpm: 1000, testedOn: '2026-04-01' }] },
    { id: 'p2', name: 'Engine 2', kind: 'pumper', stationId: 'st1', rated_gpm: 1000, tank_gal: 1000, curvePoints: [{ netPressure_psi: 150, flow_gpm: 1000, testedOn: '2026-04-01' }] },
    { id: 'p3', name: 'Engine 3', kind: 'pumper', stationId: 'st1', rated_gpm: 1000, tank_gal: 1000 },
    ...['t1', 't2', 't3', 't4'].map((id) => ({ id, name: id, kind: 'tender', stationId: 'st1', tank_gal: 2500 })),
  ],
  'plan.firstDueId': 'p3',
  'plan.tenders': ['t1', 't2', 't3', 't4'].map((tenderId) => ({ id: `k-${tenderId}`, tenderId })),
  'plan.fireGround': { lat: 45.001, lon: -40.05 },
  'district.sources.0': { id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40.0 }, usable_gal: 400_000, droughtDrop_ft: 1, seasonalDrop_ft: 1, surface_sqft: 20_000, certifiedOn: '2020-05-01' },
}

describe('what is asked of hauled water', () => {
  it('is 250 gpm for two hours from five minutes after arrival, 30,000 gal in all (published page on alternative supplies, seen as reproduced)', () => {
    expect(creditRules.minimum_gpm * creditRules.duration_s / 60).toBe(creditRules.volume_gal)
    expect(creditRules.startWithin_s).toBe(300)
    expect(creditRules.higherWithin_s).toBe(900)
  })

  it('passes when every line passes', () => {
    const { verdict, lines, highest_gpm } = check(strong, '2026-11-25')
    expect(lines.map(({ code }) => code)).toEqual([...creditLines])
    expect(lines.filter((one) => one.verdict !== 'pass')).toEqual([])
    expect(verdict).toBe('pass')
    expect(highest_gpm).toBeGreaterThan(250)
  })

  it('fails with the minute the water stops where the engine’s tank ends before supply is ready', () => {
    const late = { ...strong, 'plan.dumpSites.0.pumpSetUp_s': 1800 }
    const { verdict, firstArrive_s = NaN } = check(late)
    const duration = line('duration', late)
    // 1,000 gal at 250 gpm last four minutes; the flow is asked for from five minutes after arrival.
    expect(duration).toMatchObject({ verdict: 'fail', why: 'engine-empty' })
    expect((duration.fails_s ?? NaN) - firstArrive_s).toBeCloseTo(300 + 240, 6)
    expect(line('start', late).verdict).toBe('pass')
    expect(verdict).toBe('fail')
  })

  it('fails at the start where the first line takes longer than five minutes', () => {
    const slow = { ...strong, 'plan.firstLine_s': 400 }
    const start = line('start', slow)
    expect(start).toMatchObject({ verdict: 'fail', why: 'engine-not-there' })
    expect((start.fails_s ?? NaN) - (check(slow).firstArrive_s ?? NaN)).toBeCloseTo(300, 6)
  })

  it('fails where the shuttle brings less than the minimum', () => {
    const weak = line('duration', { ...strong, 'plan.tenders': [{ id: 'k1', tenderId: 't1' }] })
    expect(weak).toMatchObject({ verdict: 'fail', why: 'draft-lost' })
  })

  it('counts the highest rate only as far as the plan gives it steadily, and says what the run alone would hold', () => {
    const { highest_gpm = NaN, compared } = check(strong)
    const found = line('higher-rate', strong)
    expect(compared?.by).toBe('sustained')
    expect(found).toMatchObject({ verdict: 'pass', values: { flow_gpm: highest_gpm } })
    // Steps of 10 gpm, the lower of the two: rounding by hand.
    expect(highest_gpm).toBe(Math.min(found.values.run_gpm ?? NaN, Math.floor((compared?.flow_gpm ?? NaN) / 10) * 10))
    expect(found.values.next_gpm).toBe((found.values.run_gpm ?? NaN) + 10)
  })

  it('is held against the dependable flow once that is known: nothing passes that cannot be depended on', () => {
    const against = (dependable_gpm: number) => creditCheck(compilePlan(smallBundle(strong)), { today: '2026-11-25', dependable_gpm })
    const verdicts = (dependable_gpm: number) => Object.fromEntries(against(dependable_gpm).lines.map(({ code, verdict, why }) => [code, why === undefined ? verdict : `${verdict} ${why}`]))
    expect(against(274).compared).toEqual({ by: 'dependable', flow_gpm: 274 })
    expect(against(274).highest_gpm).toBe(270)
    expect(verdicts(274)).toMatchObject({ start: 'pass', duration: 'pass', 'higher-rate': 'pass steady' })
    expect(verdicts(252)).toMatchObject({ duration: 'pass', 'higher-rate': 'fail less-steady' })
    // The run alone holds it, what can be depended on does not: both are in the line.
    const short = against(240).lines.find(({ code }) => code === 'duration')
    expect(short).toMatchObject({ verdict: 'fail', why: 'less-steady', values: { compared_gpm: 240 } })
    expect(short?.values.end_s).toBeGreaterThan(7200)
  })

  it('knows nothing of the flow where no engine is named first due', () => {
    expect(line('start', { ...strong, 'plan.firstDueId': undefined })).toMatchObject({ verdict: 'unknown', why: 'no-engine', missing: [{ itemId: 'pl1', field: 'firstDueId' }] })
  })

  it('names the sources nobody has certified or measured', () => {
    const bare = { ...strong, 'district.sources.0': { id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40.0 } } }
    expect(line('certificate', bare).missing).toEqual([{ itemId: 'so1', field: 'certifiedOn' }])
    expect(line('volume', bare)).toMatchObject({ verdict: 'unknown', missing: [{ itemId: 'so1', field: 'usable_gal' }] })
    expect(line('all-year', bare)).toMatchObject({ verdict: 'unknown', missing: [{ itemId: 'so1', field: 'droughtDrop_ft' }] })
  })

  it('fails a source that holds less than 30,000 gal, and one that a drought empties', () => {
    const source = { id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40.0 }, usable_gal: 20_000 }
    expect(line('volume', { ...strong, 'district.sources.0': source })).toMatchObject({ verdict: 'fail', values: { held_gal: 20_000 } })
    expect(line('all-year', { ...strong, 'district.sources.0': { ...source, usable_gal: 400_000, surface_sqft: 20_000, droughtDrop_ft: 3 } }).verdict).toBe('fail')
  })

  it('counts mutual aid only where the minimum stands without it', () => {
    expect(line('dispatch', { ...strong, 'district.apparatus.6.mutualAid': true })).toMatchObject({ verdict: 'pass', why: 'without-them', subjectIds: ['t4'] })
    expect(line('dispatch', { ...strong, 'district.apparatus.1.mutualAid': true })).toMatchObject({ verdict: 'unknown', why: 'mutual-aid', subjectIds: ['p2'] })
  })

  it('asks for a test of every pumper at the water within the year', () => {
    expect(line('tested-pumps', strong, '2027-03-31').verdict).toBe('pass')
    expect(line('tested-pumps', strong, '2027-04-02')).toMatchObject({ verdict: 'fail', why: 'test-old' })
    expect(line('tested-pumps', { ...strong, 'district.apparatus.0.curvePoints': undefined })).toMatchObject({ verdict: 'unknown', missing: [{ itemId: 'p1', field: 'testedOn' }] })
  })

  it('knows nothing where nothing was checked: such a line never passes', () => {
    const source = { id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40.0 }, droughtDrop_ft: 1, surface_sqft: 20_000, certifiedOn: '2020-05-01' }
    const unmeasured = { ...strong, 'district.sources.0': source }
    expect(line('duration', unmeasured)).toMatchObject({ verdict: 'unknown', why: 'source-unknown', missing: [{ itemId: 'so1', field: 'usable_gal' }] })
    expect(line('all-year', unmeasured)).toMatchObject({ verdict: 'unknown', why: 'source-unknown' })
    const unnamed = { ...strong, 'plan.fillSites.0.draftSiteId': undefined, 'plan.fillSites.0.lift_ft': 10 }
    for (const code of ['duration', 'volume', 'all-year', 'certificate'] as const) expect(line(code, unnamed), code).toMatchObject({ verdict: 'unknown', missing: [{ itemId: 'f1', field: 'sourceId' }] })
    expect(line('all-year', { ...strong, 'district.sources.0': { ...source, usable_gal: 400_000, surface_sqft: undefined } })).toMatchObject({ verdict: 'unknown', why: 'usual-water' })
    expect(line('tested-pumps', strong)).toMatchObject({ verdict: 'unknown', why: 'no-day' })
    expect(line('tested-pumps', { ...strong, 'plan.dumpSites.0.pumperId': undefined }, '2026-11-25')).toMatchObject({ verdict: 'unknown', why: 'no-pumper', subjectIds: ['du1'] })
    expect(line('dispatch', { ...strong, 'district.apparatus.6.stationId': undefined })).toMatchObject({ verdict: 'unknown', why: 'no-station', missing: [{ itemId: 't4', field: 'stationId' }] })
  })

  it('measures from the station by road and from the portable tank as the crow flies', () => {
    expect(line('station', strong).values.distance_mi).toBeCloseTo(3, 9)
    expect(line('station', { ...strong, 'plan.legNotes.3.distance_mi': 6 }).verdict).toBe('fail')
    expect(line('suction-point', strong).verdict).toBe('pass')
    expect(line('suction-point', { ...strong, 'plan.fireGround': { lat: 45.004, lon: -40.05 } })).toMatchObject({ verdict: 'fail', subjectIds: ['du1'] })
  })

  it('says unknown of the flow, never pass, where the plan is blocked', () => {
    const { verdict, lines } = check({ ...strong, 'plan.tenders': [] })
    expect(verdict).not.toBe('pass')
    expect(lines.find(({ code }) => code === 'start')?.verdict).not.toBe('pass')
  })
})
