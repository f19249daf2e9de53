import { expect, test } from 'vitest'
import { thereAndReady } from '@/app/_text'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

/* Hand sums: there 5:20 → 6 min, ready 17:10 → 18 min, 5 min to set up; 18 − 6 − 5 leaves 7. */
test('says when a unit is there, when it is ready, and what lies between, so that the minutes add up', () => {
  expect(plain(thereAndReady({ arrive_s: 320, ready_s: 1030, setUp_s: 300 }, 'people'))).toBe('there 6 min, ready 18 min (5 min to set up, 7 min waiting for people)')
  expect(plain(thereAndReady({ arrive_s: 320, ready_s: 1030, setUp_s: 240 }, 'tank'))).toBe('there 6 min, ready 18 min (4 min to set up, 8 min waiting for the tank)')
})

test('names no wait where there is none, and no time that is not known', () => {
  expect(plain(thereAndReady({ arrive_s: 320, ready_s: 620, setUp_s: 300 }, 'people'))).toBe('there 6 min, ready 11 min (5 min to set up)')
  expect(plain(thereAndReady({ ready_s: 620, setUp_s: 300 }, 'people'))).toBe('ready 11 min (5 min to set up)')
  expect(plain(thereAndReady({ arrive_s: 320, ready_s: 1500 }, 'lay'))).toBe('there 6 min, ready 25 min (with the hose laid and charged)')
  expect(plain(thereAndReady({ arrive_s: 320 }, 'people'))).toBe('there 6 min')
  expect(plain(thereAndReady({ arrive_s: 900, ready_s: 1200, setUp_s: 300, isArrivalAssumed: true }, 'people'))).toBe('there 15 min (assumed), ready 20 min (5 min to set up)')
  expect(thereAndReady({}, 'people')).toBe('not known')
})
