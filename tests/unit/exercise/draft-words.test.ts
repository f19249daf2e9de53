import { expect, it } from 'vitest'
import { draftWords, whyShort } from '@/app/_exercise/draft-words'

const gallons = (volume_gal: number) => `${volume_gal} gal`
const plain = (words: readonly string[]) => words.join(' · ').replaceAll('\u00a0', ' ')
const tank = { dumpSiteId: 'd1', level_gal: 2100, capacity_gal: 2100, in_gpm: 0, out_gpm: 0, waitingCount: 0 }
const whyOf = (...drafts: Parameters<typeof draftWords>[0][]) => plain(whyShort(drafts.map((draft) => ({ ...tank, ...(draft && { draft }) })), () => 'Lane'))

it('says of full tanks without a draft that the pumper is priming again, and when water is expected', () => {
  expect(plain(draftWords({ state: 'reprimes', lostAt_s: 1072, draws_s: 90 }, gallons))).toBe('draft lost at 17:52, priming again: water in 2 min')
  expect(whyOf({ state: 'reprimes', lostAt_s: 1072, draws_s: 40 })).toBe('Lane: priming again, water in 40 s')
})

it('says what a lost draft waits for, and never a time where that hangs on tenders to come', () => {
  expect(plain(draftWords({ state: 'lost', lostAt_s: 60, restart_gal: 900 }, gallons))).toBe('draft lost at 1:00: primes again once the tanks hold 900 gal')
  expect(plain(draftWords({ state: 'lost', lostAt_s: 60, restart_gal: 900, draws_s: 200, own_gal: 120 }, gallons))).toBe('draft lost at 1:00: primes again once the tanks hold 900 gal, water in 4 min as it goes · its own tank feeds the fire, 120 gal left')
  expect(plain(draftWords({ state: 'lost', lostAt_s: 60 }, gallons))).toContain('too small')
})

it('has no reason where the site draws, gives its own water, or is asked for nothing', () => {
  expect(whyOf({ state: 'draws' }, { state: 'lost', own_gal: 10 }, undefined)).toBe('')
  expect(draftWords(undefined, gallons)).toEqual([])
  expect(whyOf({ state: 'sets-up', set_s: 60 }, { state: 'waits' })).toBe('Lane: pumper not set up yet · Lane: too little in the tanks to begin')
})
