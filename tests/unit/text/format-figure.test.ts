import { describe, expect, test } from 'vitest'
import { formatAsked, formatBetween, formatChange, formatFrom, formatGain, formatGiven, formatQuantity, formatShortBy, formatSignedChange, formatSpare, formatUntil, sayIssue, timeShown, timeWords } from '@/app/_text'
import { issue } from '@/lib/issue'

const plain = (text: string | undefined): string | undefined => text?.replaceAll('\u00a0', ' ')

// How far figures are rounded: common practice, no source.
describe('a flow given', () => {
  test('goes down to a step, so that nothing is promised that is not there', () => {
    expect([292, 289.9, 999.9, 1004, 1201, 19.9, 3.2].map((flow_gpm) => plain(formatGiven(flow_gpm, 'us')))).toEqual(['290 gpm', '285 gpm', '995 gpm', '1,000 gpm', '1,200 gpm', '19 gpm', '3 gpm'])
    for (let count = 0; count < 6000; count++) {
      const flow_gpm = (count * 37) / 100
      const shown = Number(plain(formatGiven(flow_gpm, 'us'))?.replace(/[^0-9]/g, ''))
      expect(shown).toBeLessThanOrEqual(flow_gpm)
      expect(flow_gpm - shown).toBeLessThan(flow_gpm < 20 ? 1 : flow_gpm < 1000 ? 5 : 10)
    }
  })

  test('is the headline of formatQuantity, so that no two screens differ', () => {
    for (const system of ['us', 'metric'] as const) {
      for (const flow_gpm of [3.2, 18.7, 292, 673.9, 1201]) expect(formatGiven(flow_gpm, system)).toBe(formatQuantity(flow_gpm, 'gpm', system, { style: 'headline', toward: 'down' }))
    }
  })

  test('keeps its step where it is said in litres', () => {
    expect(plain(formatGiven(292, 'metric'))).toBe('1,100 L/min')
    expect(plain(formatGiven(1201, 'metric'))).toBe('4,500 L/min')
  })

  test('that meets a need between two steps is never shown below it', () => {
    expect(plain(formatGiven(754, 'us', 753))).toBe('753 gpm')
    expect(plain(formatGiven(752, 'us', 753))).toBe('750 gpm')
    expect(plain(formatGiven(760, 'us', 753))).toBe('760 gpm')
  })

  test('that is large has three significant figures: nobody knows a river to the gallon', () => {
    expect([85_418, 12_345, 9_999].map((flow_gpm) => plain(formatGiven(flow_gpm, 'us')))).toEqual(['85,400 gpm', '12,300 gpm', '9,990 gpm'])
    expect([105_818_600, 326_450, 28_549, 950].map((held_gal) => plain(formatQuantity(held_gal, 'gal', 'us', { style: 'headline', toward: 'down' })))).toEqual(['105,000,000 gal', '326,000 gal', '28,500 gal', '950 gal'])
  })

  test('that is not known says so', () => {
    expect([formatGiven(undefined, 'us'), formatGiven(null, 'us'), formatAsked(null, 'us')]).toEqual(['not known', 'not known', 'not known'])
  })
})

test('a flow that was typed is shown as it was typed, one that was worked out goes up', () => {
  expect([753, 750, 116.3].map((flow_gpm) => plain(formatAsked(flow_gpm, 'us')))).toEqual(['753 gpm', '750 gpm', '117 gpm'])
  // 2,000 L/min typed is 528.344 gpm inside (1 gal = 3.785411784 L exactly, NIST Handbook 44).
  expect(plain(formatAsked(2000 / 3.785411784, 'metric'))).toBe('2,000 L/min')
  // 500, 750 and 1,000 gpm typed are 1,892.7, 2,839.1 and 3,785.4 L/min.
  expect([500, 750, 1000].map((flow_gpm) => plain(formatAsked(flow_gpm, 'metric')))).toEqual(['1,900 L/min', '2,840 L/min', '3,790 L/min'])
  // One that is met is shown as met, and short of it the figures as shown differ by what is said.
  expect([plain(formatGiven(500, 'metric', 500)), plain(formatGiven(499, 'metric', 500)), plain(formatShortBy(499, 500, 'metric'))]).toEqual(['1,900 L/min', '1,880 L/min', '20 L/min'])
})

describe('a difference', () => {
  test('is that of the figures as shown', () => {
    expect(plain(formatShortBy(273, 750, 'us'))).toBe('480 gpm') // 270 of 750
    expect(plain(formatSpare(673, 500, 'us'))).toBe('170 gpm')
    expect(plain(formatChange(673, 698, 'us'))).toBe('25 gpm')
    expect(plain(formatChange(698, 673, 'us'))).toBe('−25 gpm')
  })

  test('is on one side only', () => {
    expect(formatShortBy(750, 750, 'us')).toBeUndefined()
    expect(formatSpare(749.9, 750, 'us')).toBeUndefined()
    expect(plain(formatSpare(754, 753, 'us'))).toBe('0 gpm')
  })

  test('too small to show is neither hidden nor called nothing', () => {
    expect(plain(formatChange(671, 674, 'us'))).toBe('less than 5 gpm')
    expect(plain(formatChange(671, 671.2, 'us'))).toBe('0 gpm')
  })

  test('gained is never more than was gained', () => {
    // 214 + 36.3 = 250.3: shown as 210 and 250, yet no 40 gpm are gained.
    expect(plain(formatGain(214, 250.3, 'us'))).toBe('35 gpm')
    expect(plain(formatGain(673, 698, 'us'))).toBe('25 gpm')
    expect(plain(formatGain(671, 674, 'us'))).toBe('less than 5 gpm')
    // Upon one flow they read alike: 19 gpm upon 845 are known no finer than the flow.
    expect([35.4, 19, 14.2, 4, 0].map((gain_gpm) => plain(formatGain(845, 845 + gain_gpm, 'us')))).toEqual(['35 gpm', '15 gpm', '10 gpm', 'less than 5 gpm', '0 gpm'])
    for (let before_gpm = 100; before_gpm < 1200; before_gpm += 13.7) for (const gain_gpm of [5.5, 12.3, 36.3, 118, 240.9]) {
      const words = plain(formatGain(before_gpm, before_gpm + gain_gpm, 'us')) ?? ''
      if (words.startsWith('less than')) expect(gain_gpm).toBeLessThan(10)
      else expect(Number(words.replace(/,| gpm/g, ''))).toBeLessThanOrEqual(gain_gpm)
    }
  })

  test('has a sign where it shows, and none where it does not', () => {
    expect([formatSignedChange(673, 698, 'us'), formatSignedChange(698, 673, 'us'), formatSignedChange(671, 674, 'us')].map(plain)).toEqual(['+25 gpm', '−25 gpm', 'less than 5 gpm'])
  })

  test('in a sentence about two figures is theirs as shown', () => {
    const short = issue('short-of-need', 'warn', [], { flow_gpm: 273, needed_gpm: 750 })
    for (const words of ['270 gpm', '750 gpm']) expect(plain(sayIssue(short, () => undefined, 'us'))).toContain(words)
    const gap = issue('water-gap', 'warn', [], { from_s: 8 * 60 + 3, to_s: 15 * 60 + 42, gap_s: 459 })
    for (const words of ['from 8 min to 16 min', 'gap before supply is 8 min']) expect(plain(sayIssue(gap, () => undefined, 'us'))).toContain(words)
  })
})

describe('a time of the answer', () => {
  const times = { firstArrival_s: 333, firstWater_s: 453, tankEmpty_s: 483, supplyReady_s: 942, gap_s: 459, short_s: 0, needed_gpm: 500, sustainable_gpm: 520, issues: [] }

  test('is never early for what comes and never late for what ends', () => {
    expect([formatFrom(841), formatUntil(899), formatBetween(483, 942)].map(plain)).toEqual(['15 min', '14 min', '8 min'])
    expect([formatUntil(71.9 * 3600), formatUntil(96.5 * 3600), formatUntil(1316 * 3600 + 540)].map(plain)).toEqual(['71 h 54 min', '4 days', '54 days'])
  })

  test('is the same wherever it stands, and the gap is that between the two shown', () => {
    expect((['firstArrival_s', 'firstWater_s', 'tankEmpty_s', 'supplyReady_s', 'gap_s', 'short_s'] as const).map((figure) => plain(timeWords(figure, times)))).toEqual(['6 min', '8 min', '8 min', '16 min', '8 min', 'none'])
  })

  test('that nobody can know says what to enter, and is told apart from one that never comes', () => {
    const nobody = { ...times, firstArrival_s: null, firstWater_s: 942, tankEmpty_s: null, gap_s: null, issues: [issue('first-due-missing', 'warn')] }
    expect(plain(timeWords('gap_s', nobody))).toBe('not known: name the first-due engine')
    expect(timeShown('tankEmpty_s', { ...nobody, needed_gpm: null, short_s: null })).toEqual({ value: 'not known', ask: 'name the first-due engine and enter the needed flow' })
    expect(plain(timeWords('firstWater_s', nobody))).toBe('16 min, from the supply')
    expect(timeWords('tankEmpty_s', { ...times, tankEmpty_s: null, gap_s: 0 })).toBe('not before supply is ready')
    expect(timeWords('gap_s', { ...times, tankEmpty_s: null, gap_s: 0 })).toBe('none')
    expect(timeWords('gap_s', { ...times, tankEmpty_s: null, gap_s: 0, sustainable_gpm: 480 })).toBe('none, yet never enough')
    expect(timeWords('supplyReady_s', { ...times, supplyReady_s: null })).toBe('never')
  })
})
