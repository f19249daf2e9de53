import { isNeverEnough, missingForTime, type NeedyTime, type SupplyResult } from '@/lib/supply'
import { formatBetween, formatFrom, formatUntil } from './format-figure'
import { listWords } from './list-words'
import { say } from './say'

type Time = NeedyTime | 'supplyReady_s'
type Times = Pick<SupplyResult, Time | 'sustainable_gpm' | 'laterFlows' | 'needed_gpm' | 'issues'>

/** A time of the answer as it is shown; where it is not known, `ask` says what has to be said first. */
export type TimeShown = { readonly value: string; readonly ask?: string }

/** A time of the answer, in a word or two; the gap is that between the minutes shown. What is not known is told apart from what never comes. */
export function timeShown(figure: Time, times: Times): TimeShown {
  const missing = figure === 'supplyReady_s' ? [] : missingForTime(figure, times)
  const value = times[figure]
  if (missing.length > 0) return { value: say('result.time.not-known'), ask: listWords(missing.map((what) => say(`result.ask.${what}`))) }
  if (value === null) return { value: noTimeWords(figure, times) }
  if (figure === 'gap_s') return { value: gapWords(value, times) }
  if (figure === 'short_s' && value === 0) return { value: say('result.time.always-met') }
  if (figure === 'firstWater_s' && missingForTime('firstArrival_s', times).length > 0) return { value: say('result.time.from-supply', { time: formatFrom(value) }) }
  return { value: figure === 'tankEmpty_s' ? formatUntil(value) : formatFrom(value) }
}

/** Nothing is missing, and there is no such time. */
function noTimeWords(figure: Time, { supplyReady_s }: Times): string {
  if (figure === 'gap_s' || figure === 'short_s') return say('result.time.not-known')
  return say(figure === 'tankEmpty_s' && supplyReady_s !== null ? 'result.time.not-empty' : 'result.time.never')
}

/** No gap is told apart from a supply that follows without one and is not what is needed. */
function gapWords(gap_s: number, times: Times): string {
  const { tankEmpty_s, supplyReady_s } = times
  if (gap_s === 0) return say(isNeverEnough(times) ? 'result.time.no-gap-yet-short' : 'result.time.no-gap')
  return tankEmpty_s !== null && supplyReady_s !== null ? formatBetween(tankEmpty_s, supplyReady_s) : formatFrom(gap_s)
}

/** The same as one text: "not known: name the first-due engine". */
export function timeWords(figure: Time, times: Times): string {
  const { value, ask } = timeShown(figure, times)
  return ask === undefined ? value : say('result.time.unknown', { asks: ask })
}
