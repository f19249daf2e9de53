import type { TimedEvent } from './on-one-clock'
import type { LogWorld } from './log-world'

/** Flow over the last ten minutes. `readings`: of gauges at the attack, each until the next; `loads`: what was dumped, averaged. */
export type FlowNow = { basis: 'readings' | 'loads'; flow_gpm: number; doubt_gpm: number; over_s: number } | { basis: 'none' }

const FLOW_WINDOW_S = 600
/** A flow read off a gauge may be off by so much of it, and more the longer ago it was. Common practice, no source. */
const READ_SHARE = 0.1
const LOAD_SHARE = 0.1
/** A reading says nothing of now after this. Common practice, no source. */
const STALE_S = 1800

/**
 * @param past  events up to now, on one clock
 * @param now_ms on that clock
 */
export function flowAt(past: readonly TimedEvent[], world: Pick<LogWorld, 'load_gal'>, now_ms: number): FlowNow {
  const from_ms = now_ms - FLOW_WINDOW_S * 1000
  const readings = past.filter(({ kind, post, at_ms }) => kind === 'flow' && post.kind === 'attack' && at_ms >= now_ms - STALE_S * 1000)
  if (readings.length > 0) return fromReadings(readings, from_ms, now_ms)
  const loads = past.filter(({ kind, post, at_ms, apparatusId }) => kind === 'empty' && post.kind === 'dump' && at_ms > from_ms && apparatusId !== undefined)
    .flatMap(({ apparatusId }) => world.load_gal(apparatusId ?? '') ?? [])
  if (loads.length === 0) return { basis: 'none' }
  const minutes = FLOW_WINDOW_S / 60
  const most_gal = Math.max(...loads)
  // One load more or less falls into the ten minutes by chance.
  return { basis: 'loads', flow_gpm: loads.reduce((a, b) => a + b, 0) / minutes, doubt_gpm: Math.hypot(most_gal, ...loads.map((load_gal) => LOAD_SHARE * load_gal)) / minutes, over_s: FLOW_WINDOW_S }
}

/** Averaged over that part of the window in which there is a reading to go by. */
function fromReadings(readings: readonly TimedEvent[], from_ms: number, now_ms: number): FlowNow {
  let gallons = 0
  let minutes = 0
  readings.forEach(({ at_ms, value = 0 }, i) => {
    const held = Math.max(0, (readings[i + 1]?.at_ms ?? now_ms) - Math.max(at_ms, from_ms)) / 60_000
    gallons += held * value
    minutes += held
  })
  const last = readings.at(-1)
  const flow_gpm = minutes > 0 ? gallons / minutes : (last?.value ?? 0)
  const values = readings.map(({ value = 0 }) => value)
  const range_gpm = (Math.max(...values) - Math.min(...values)) / 2
  return { basis: 'readings', flow_gpm, doubt_gpm: Math.max(READ_SHARE * flow_gpm, range_gpm / Math.sqrt(values.length)), over_s: minutes * 60 }
}
