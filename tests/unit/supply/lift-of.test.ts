import { expect, test } from 'vitest'
import type { Evidence } from '@/lib/evidence'
import type { DraftSite, Source } from '@/lib/plan'
import { liftIssues, liftOf } from '@/lib/supply/drafting'
import { startLedger } from '@/lib/supply/ledger'
import type { SeasonDrop } from '@/lib/supply/season'

const noDrop = { drop_ft: 0, issues: [] } as unknown as SeasonDrop
const read = (doubt_ft: number, height_ft: number): Evidence => ({ mark: 'computed', source: 'elevation data', spreadShare: doubt_ft / height_ft })
const site = (more: Partial<DraftSite>): DraftSite => ({ id: 'bank', name: 'Bank', point: { lat: 0, lon: 0 }, intakeHeight_ft: 3, ...more })
const pond = (surfaceElevation_ft: number, evidence?: Evidence): Pick<Source, 'surfaceElevation_ft' | 'evidence'> => ({ surfaceElevation_ft, ...(evidence && { evidence: { surfaceElevation_ft: evidence } }) })

test('a lift by heights that say how far they are off carries that doubt in feet', () => {
  const ledger = startLedger()
  const bank = site({ bankElevation_ft: 710, evidence: { bankElevation_ft: read(3, 710) } })
  const lift = liftOf(ledger, { id: 'fill' }, bank, pond(700, read(4, 700)), noDrop)
  expect(lift).toMatchObject({ lift_ft: 13, from: 'elevations', isGuess: false })
  const [noted] = [...ledger.numbers.values()].filter(({ field }) => field === 'lift_ft')
  expect(noted!.spreadShare * 13).toBeCloseTo(5, 9)
  expect(liftIssues(lift, 'fill')).toEqual([])
})

test('a lift that may be off by more than itself promises nothing: the assumed one stands in, with a warning', () => {
  const bank = site({ bankElevation_ft: 710, evidence: { bankElevation_ft: read(52.5, 710) } })
  const lift = liftOf(startLedger(), { id: 'fill' }, bank, pond(700, read(52.5, 700)), noDrop)
  expect(lift).toMatchObject({ lift_ft: 10, from: 'assumed', isGuess: true })
  const [warning] = liftIssues(lift, 'fill')
  expect(warning).toMatchObject({ code: 'lift-doubtful', severity: 'warn', subjectIds: ['fill'] })
  expect(warning!.values['elevation_ft']).toBe(13)
  expect(warning!.values['doubt_ft']).toBeCloseTo(Math.hypot(52.5, 52.5), 9)
})

test('a measured lift wins over any height', () => {
  const bank = site({ lift_ft: 8, bankElevation_ft: 710, evidence: { bankElevation_ft: read(1, 710), lift_ft: { mark: 'measured' } } })
  expect(liftOf(startLedger(), { id: 'fill' }, bank, pond(700, read(1, 700)), noDrop)).toMatchObject({ lift_ft: 8, from: 'measured' })
})

test('heights entered with no such doubt count as before', () => {
  expect(liftOf(startLedger(), { id: 'fill' }, site({ bankElevation_ft: 702 }), pond(700), noDrop)).toMatchObject({ lift_ft: 5, from: 'elevations' })
})
