import { describe, expect, test } from 'vitest'
import { gaugeReading_inHg, highestColumn_ft, hoseLoss_psi, tankLasts_s, tenderBrings_gpm } from '@/app/_help/cheat-tables'

describe('the tables of the cheat sheets', () => {
  // Source: California municipal training presentation, hose lay friction (seen): C 2 and 0.08, FL = C Q² L.
  test('friction in hose by the handbook form', () => {
    expect(hoseLoss_psi(2.5, 250)).toBeCloseTo(12.5)
    expect(hoseLoss_psi(5, 1000)).toBeCloseTo(8)
  })

  test('say nothing where no hose would bear the loss', () => {
    expect(hoseLoss_psi(1.75, 500)).toBeUndefined()
  })

  // Source: two pump data books, air pressure by altitude (seen): 33.9 ft at sea level, 28.2 ft at 5,000 ft; textbook
  // table of vapor pressure (seen): 0.256 psi at 60 °F.
  test('the highest column of water is the air over the vapor', () => {
    expect(highestColumn_ft(0, 60)).toBeCloseTo(33.9 - 0.256 * 2.31, 0)
    expect(highestColumn_ft(5000, 60)).toBeCloseTo(28.2 - 0.256 * 2.31, 0)
    expect(highestColumn_ft(0, 80)).toBeLessThan(highestColumn_ft(0, 40))
  })

  // Common practice, no source: an inch of mercury is 1.13 ft of water.
  test('the gauge reads the lift', () => {
    expect(gaugeReading_inHg(11.3)).toBeCloseTo(10, 1)
  })

  // Source: rating bureau page and lesson plan (seen): tank less a tenth over the minutes of the round.
  test('a tender brings nine tenths of its tank a round', () => {
    expect(tenderBrings_gpm(2000, 20)).toBeCloseTo(90)
  })

  test('a portable tank lasts nine tenths of what it holds over the flow', () => {
    expect(tankLasts_s(3000, 500)).toBeCloseTo(324)
  })
})
