import { describe, expect, it } from 'vitest'
import { liftText, placeDoubt } from '@/app/_draft/lift-words'
import { isFallUnknown, seasonText } from '@/app/_draft/season-words'
import { trialFromAddress } from '@/app/_draft/trial-from-address'
import { trialToAddress } from '@/app/_links/sheet-address'
import type { DraftingPump } from '@/lib/plan'
import { findDraftSheet, type SheetTrial } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const sheetOf = (changes: Readonly<Record<string, unknown>> = {}, trial: SheetTrial = {}) => {
  const { district } = smallBundle(changes)
  return findDraftSheet(district, district.draftSites[0]!, district.apparatus[0] as DraftingPump, trial)!
}
const plain = (text: string | undefined): string | undefined => text?.replace(/\u00a0/g, ' ').trim()
const measured = { 'district.draftSites.0.evidence': { lift_ft: { mark: 'measured' } } }

describe('the lift on a sheet', () => {
  it('shows what it is the sum of', () => {
    const dry = sheetOf({ ...measured, 'district.draftSites.0.lift_ft': 18.5, 'district.sources.0.seasonalDrop_ft': 1.4 })
    expect(plain(liftText(dry, 'us'))).toBe('19.9 ft (18.5 ft measured + 1.4 ft dry season)')
    expect(plain(liftText(sheetOf(measured), 'us'))).toBe('10 ft')
  })

  it('says that it is assumed, and that the depth is not measured', () => {
    const guess = sheetOf({ 'district.draftSites.0.lift_ft': undefined })
    expect(plain(liftText(guess, 'us'))).toBe('10 ft assumed')
    expect(plain(placeDoubt(guess, 'us'))).toBe('Lift assumed 10 ft, depth over the strainer not measured.')
    expect(plain(placeDoubt(sheetOf(measured), 'us'))).toBe('The depth over the strainer is not measured.')
  })

  it('says nothing of either where both are measured', () => {
    expect(placeDoubt(sheetOf({ 'district.draftSites.0.strainerCover_ft': 3, 'district.draftSites.0.evidence': { lift_ft: { mark: 'measured' }, strainerCover_ft: { mark: 'measured' } } }), 'us')).toBeUndefined()
  })
})

describe('the water level on a sheet', () => {
  it('in a drought whose fall is not recorded is said to be another, and which', () => {
    const none = sheetOf({}, { season: 'drought' })
    expect(isFallUnknown(none)).toBe(true)
    expect(seasonText(none, 'us')).toBe('How far this water falls in a drought is not recorded: the figures below are for the usual level.')
    const dry = sheetOf({ 'district.sources.0.seasonalDrop_ft': 1.4 }, { season: 'drought' })
    expect(plain(seasonText(dry, 'us'))).toBe('How far this water falls in a drought is not recorded: the figures below are for a dry season, 1.4 ft under the usual level.')
  })

  it('says that no fall is recorded where no season was chosen', () => {
    expect(isFallUnknown(sheetOf())).toBe(true)
    expect(isFallUnknown(sheetOf({}, { season: 'usual' }))).toBe(false)
    expect(isFallUnknown(sheetOf({ 'district.sources.0.seasonalDrop_ft': 1.4 }))).toBe(false)
  })
})

describe('what is tried on a sheet', () => {
  it('comes back whole from its address', () => {
    const trial: SheetTrial = { season: 'drought', lift_ft: 12.5, altitude_ft: 2400, water_degF: 70, suction: { size_in: 5, length_ft: 30, lineCount: 2, intake: 'front' } }
    expect(trialFromAddress(trialToAddress(trial))).toEqual(trial)
    expect(trialFromAddress(trialToAddress({}))).toEqual({})
  })

  it('is left out where the address makes no sense of it', () => {
    expect(trialFromAddress({ season: 'monsoon', lift: 'high', altitude: '1e9', suction: '6_many' })).toEqual({})
  })
})
