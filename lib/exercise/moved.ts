import { advance, FIRE, fork, settle } from '../shuttle'
import { SECONDS_PER_MINUTE } from '../units'
import type { Session, Stretch } from './session'

/** What moved through the chain over the last while, as mean flows. */
export type Moved = {
  readonly over_s: number
  /** From the sources, into tenders and lays. */
  readonly drawn_gpm: number
  /** Into the tanks of the dump sites. */
  readonly dumped_gpm: number
  /** To the fire ground. */
  readonly delivered_gpm: number
}

/** Long enough for a tender or two to have come, short enough to show what has just changed. */
const LATELY_S = 600

/**
 * The mean flows of the last minutes.
 *
 * @param over_s length of that time, above 0; from dispatch on where the exercise is younger
 * @returns undefined at dispatch
 */
export function movedLately(session: Session, over_s = LATELY_S): Moved | undefined {
  const from_s = Math.max(0, session.clock_s - over_s)
  const span_s = session.clock_s - from_s
  if (span_s <= 0) return undefined
  const sum = { drawn: 0, dumped: 0, delivered: 0 }
  const stretches = [...session.past.map(({ stretch }) => stretch), session.now]
  stretches.forEach((stretch, k) => {
    const to_s = stretches[k + 1]?.from_s ?? session.clock_s
    if (to_s <= from_s || to_s <= stretch.from_s) return
    const [before, after] = [Math.max(from_s, stretch.from_s), to_s].map((at_s) => totalsAt(stretch, at_s))
    for (const part of ['drawn', 'dumped', 'delivered'] as const) sum[part] += after![part] - before![part]
  })
  const flow_gpm = (volume_gal: number) => Math.max(0, (volume_gal * SECONDS_PER_MINUTE) / span_s)
  return { over_s: span_s, drawn_gpm: flow_gpm(sum.drawn), dumped_gpm: flow_gpm(sum.dumped), delivered_gpm: flow_gpm(sum.delivered) }
}

function totalsAt({ scenario, start }: Stretch, at_s: number): { drawn: number; dumped: number; delivered: number } {
  const state = fork(start)
  advance(scenario, state, at_s)
  settle(scenario, state)
  const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0)
  return { drawn: total(state.drawn_gal) + total(state.fed_gal), dumped: total(state.received_gal), delivered: state.fire[FIRE.delivered_gal]! }
}
