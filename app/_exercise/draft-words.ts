import type { SeatView } from '@/lib/exercise'
import { formatClock, formatMinutes, say, type NameOf } from '../_text'
import '../_text/areas/exercise'

type Draft = SeatView['tanks'][number]['draft']

/** What the pumper of a dump site does where it does not draw, and when its water is expected. */
export function draftWords(draft: Draft, gallons: (volume_gal: number) => string): string[] {
  if (!draft || draft.state === 'draws') return []
  const { state, lostAt_s, draws_s, set_s, restart_gal, own_gal } = draft
  const own = own_gal === undefined ? [] : [say('exercise.draft.own', { water: gallons(own_gal) })]
  if (state === 'sets-up') return [set_s === undefined ? say('exercise.draft.sets-up') : say('exercise.draft.sets-up.time', { time: formatMinutes(set_s, 'up') })]
  if (state === 'waits') return [say('exercise.draft.waits')]
  const clock = formatClock(lostAt_s ?? 0)
  if (state === 'reprimes') return [say('exercise.draft.reprimes', { clock, time: formatMinutes(draws_s ?? 0, 'up') }), ...own]
  if (restart_gal === undefined) return [say('exercise.draft.lost.never', { clock }), ...own]
  const water = gallons(restart_gal)
  return [draws_s === undefined ? say('exercise.draft.lost', { clock, water }) : say('exercise.draft.lost.time', { clock, water, time: formatMinutes(draws_s, 'up') }), ...own]
}

/** Why the fire gets less than it asks for, for whoever sees the dump sites: those that give nothing. */
export function whyShort(tanks: SeatView['tanks'], names: NameOf): string[] {
  return tanks.flatMap(({ dumpSiteId, draft }) =>
    !draft || draft.state === 'draws' || draft.own_gal !== undefined ? [] : [say(`exercise.flow.why.${draft.state}`, { site: names(dumpSiteId) ?? dumpSiteId, time: formatMinutes(draft.draws_s ?? 0, 'up') })])
}
