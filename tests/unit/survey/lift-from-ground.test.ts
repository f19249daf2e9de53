import { describe, expect, test } from 'vitest'
import { canReadGround, liftFromGround } from '@/app/_survey/lift-from-ground'
import type { DraftSite, Source } from '@/lib/plan'

const at = (height_ft: number, doubt_ft: number) => ({ height_ft, doubt_ft })
const site: DraftSite = { id: 'bank', name: 'Bank', point: { lat: 0, lon: 0 }, intakeHeight_ft: 2 }
const source: Source = { id: 'pond', name: 'Pond', kind: 'pond', point: { lat: 0, lon: 0 } }

describe('lift read from the ground', () => {
  test('is bank and intake height above the water, its doubt that of both', () => {
    expect(liftFromGround(site, at(712, 3), at(700, 4))).toMatchObject({ lift_ft: 14, doubt_ft: 5, isPromise: true })
  })
  test('is no promise when it may be off by more than itself, nor when it lies below the water', () => {
    expect(liftFromGround(site, at(702, 3), at(700, 4))?.isPromise).toBe(false)
    expect(liftFromGround(site, at(690, 0), at(700, 0))?.isPromise).toBe(false)
  })
  test('is not to be had without both heights, nor where a height is smaller than its doubt', () => {
    expect(liftFromGround(site, undefined, at(700, 4))).toBeUndefined()
    expect(liftFromGround(site, at(12, 52), at(3, 52))).toBeUndefined()
  })
})

describe('heights may be read', () => {
  test('where nothing is known, and again where they were read before', () => {
    expect(canReadGround(site, source)).toBe(true)
    expect(canReadGround({ ...site, bankElevation_ft: 712, evidence: { bankElevation_ft: { mark: 'computed', spreadShare: 0.01 } } }, source)).toBe(true)
  })
  test('never over a measured lift or a height somebody entered', () => {
    expect(canReadGround({ ...site, lift_ft: 9 }, source)).toBe(false)
    expect(canReadGround({ ...site, bankElevation_ft: 712 }, source)).toBe(false)
    expect(canReadGround(site, { ...source, surfaceElevation_ft: 700, evidence: { surfaceElevation_ft: { mark: 'measured' } } })).toBe(false)
    expect(canReadGround(site, undefined)).toBe(false)
  })
})
