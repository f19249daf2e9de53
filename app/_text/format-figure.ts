import { displayUnit } from './display-unit'
import { formatNumber } from './format-number'
import { formatMinutes, shownTime_s } from './format-time'
import { findHeadlineStep, roundTo } from './rounding'
import { say } from './say'
import { UNIT_SPACE } from './unit-space'
import type { UnitSystem } from './unit-system'

/*
 * The one rule by which the figures of an answer are rounded, on every screen, on paper and in a terminal:
 *
 * - a flow that something gives goes down to a step (`rounding.ts`): nothing is promised that is not there;
 * - a large flow or volume has three significant figures: nobody knows a lake to the gallon;
 * - a flow that is asked for goes up to the whole gpm, or to 10 L/min: what was typed in the units shown stands as it was typed;
 * - when something is there goes up to the minute, when something runs out down;
 * - a difference is that of the figures as shown: a reader who subtracts finds the same;
 * - what a change would gain is never more than the step below its true gain, by the step of the flows it lies between.
 */

const flowWords = (shown: number, system: UnitSystem): string => formatNumber(shown) + UNIT_SPACE + displayUnit('gpm', system).symbol

function shownFlow(flow_gpm: number, system: UnitSystem, toward: 'down' | 'up'): number {
  const shown = flow_gpm * displayUnit('gpm', system).factor
  return roundTo(shown, findHeadlineStep(shown, 'gpm', system, toward) ?? 1, toward)
}

/** A need that lies between two steps and is met is shown as met. */
function shownGiven(flow_gpm: number, system: UnitSystem, needed_gpm?: number | null): number {
  const down = shownFlow(flow_gpm, system, 'down')
  return typeof needed_gpm === 'number' && flow_gpm >= needed_gpm ? Math.max(down, shownFlow(needed_gpm, system, 'up')) : down
}

/**
 * A flow that a plan, a site, a pump or a source gives: "670 gpm".
 *
 * @param flow_gpm finite; undefined or null says that it is not known
 * @param needed_gpm what it stands beside: a flow that meets it is never shown below it
 */
export function formatGiven(flow_gpm: number | undefined | null, system: UnitSystem, needed_gpm?: number | null): string {
  return typeof flow_gpm === 'number' ? flowWords(shownGiven(flow_gpm, system, needed_gpm), system) : say('quantity.unknown')
}

/** A flow that is asked for, typed or worked out: "753 gpm". */
export function formatAsked(flow_gpm: number | undefined | null, system: UnitSystem): string {
  return typeof flow_gpm === 'number' ? flowWords(shownFlow(flow_gpm, system, 'up'), system) : say('quantity.unknown')
}

/** By how much a flow given stays below one asked for; undefined where it meets it. */
export function formatShortBy(flow_gpm: number, needed_gpm: number, system: UnitSystem): string | undefined {
  return flow_gpm >= needed_gpm ? undefined : flowWords(shownFlow(needed_gpm, system, 'up') - shownGiven(flow_gpm, system), system)
}

/** By how much a flow given exceeds one asked for; undefined where it falls short. */
export function formatSpare(flow_gpm: number, needed_gpm: number, system: UnitSystem): string | undefined {
  return flow_gpm < needed_gpm ? undefined : flowWords(shownGiven(flow_gpm, system, needed_gpm) - shownFlow(needed_gpm, system, 'up'), system)
}

/** Changes below it are the grid of the search (lib/shuttle). */
const NO_CHANGE_GPM = 0.5

/** From one flow given to another: "25 gpm", "−40 gpm"; a change too small to show reads "less than 5 gpm". */
export function formatChange(before_gpm: number, after_gpm: number, system: UnitSystem): string {
  const shown = shownGiven(after_gpm, system) - shownGiven(before_gpm, system)
  if (shown !== 0 || Math.abs(after_gpm - before_gpm) < NO_CHANGE_GPM) return flowWords(shown, system)
  return lessThanStep(after_gpm, system)
}

/** Step of a flow as shown, in the unit shown: what lies beside it is known no finer. */
const stepBeside = (beside_gpm: number, system: UnitSystem): number => findHeadlineStep(beside_gpm * displayUnit('gpm', system).factor, 'gpm', system) ?? 1

const lessThanStep = (beside_gpm: number, system: UnitSystem): string => say('quantity.less-than', { quantity: flowWords(stepBeside(beside_gpm, system), system) })

/**
 * What a change would gain, where the flows themselves are not beside it: "35 gpm" of 36.3, however the flows before and after fall on
 * their steps; "less than 5 gpm" where it is too small to show. Gains upon one flow all have its step, so that they read alike.
 *
 * @param after_gpm no less than before_gpm, or the change is no gain and is given as `formatChange` gives it
 */
export function formatGain(before_gpm: number, after_gpm: number, system: UnitSystem): string {
  const shown = shownGiven(after_gpm, system) - shownGiven(before_gpm, system)
  const sure = roundTo((after_gpm - before_gpm) * displayUnit('gpm', system).factor, stepBeside(after_gpm, system), 'down')
  if (shown <= 0 || sure >= shown) return formatChange(before_gpm, after_gpm, system)
  return sure > 0 ? flowWords(sure, system) : lessThanStep(after_gpm, system)
}

/** A change with its sign: "+25 gpm", "−40 gpm"; what is too small to show has none. */
export function formatSignedChange(before_gpm: number, after_gpm: number, system: UnitSystem): string {
  const isMore = shownGiven(after_gpm, system) > shownGiven(before_gpm, system)
  return `${isMore ? '+' : ''}${formatChange(before_gpm, after_gpm, system)}`
}

/** When something is there: supply ready, first water, a vehicle at its place. Never shown earlier than it is. */
export const formatFrom = (time_s: number): string => formatMinutes(time_s, 'up')

const DAY_S = 86_400
/** From here on hours say less than days. */
const LONG_S = 3 * DAY_S

/** When something ends, or how long it lasts: a tank, a source. Never shown later than it is. */
export const formatUntil = (time_s: number): string => (time_s < LONG_S ? formatMinutes(time_s, 'down') : say('quantity.days', { count: Math.floor(time_s / DAY_S) }))

/** Time from the end of one thing to the start of the next, by the minutes shown. */
export const formatBetween = (end_s: number, start_s: number): string =>
  formatMinutes(Math.max(0, shownTime_s(start_s, 'up') - shownTime_s(end_s, 'down')), 'up')
