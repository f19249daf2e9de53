import { tenderSteps } from '../field-log'
import { middleOf } from '../middle-of'
import { roundOf, tripStages, type ShuttleSpec, type TenderSpec, type TripStage } from '../shuttle'
import { defaults } from '../supply'
import { noTimes, stageUpTo, type Mark, type Stay, type TripTimes } from './marks'

/** Nobody knows the road of a log without a plan: assumed. */
const ROAD_S = 300
const LEAST_S = 1

/** Times of a tender's round by the plan, with nobody in the way. */
export function plannedTimes(spec: ShuttleSpec, tender: TenderSpec): TripTimes {
  const round = roundOf(tender, spec.fills[tender.fillIndex]?.bayRate_gpm[0] ?? 0)
  const { dumpPosition_s, dumpClear_s, fillPosition_s, fillClear_s, toFill_s, toDump_s } = tender
  return atLeast({ dumpPosition: dumpPosition_s, dump: round.dump_s, dumpClear: dumpClear_s, toFill: toFill_s, fillPosition: fillPosition_s, fill: round.fill_s, fillClear: fillClear_s, toDump: toDump_s })
}

/** Where no plan says: the defaults of handling and rates, and an assumed road. */
export function unplannedTimes(usable_gal: number): TripTimes {
  const perMinute = 60
  return atLeast({
    dumpPosition: defaults.dumpPositionBackIn_s.value, dump: (usable_gal / defaults.tenderDump_gpm.value) * perMinute, dumpClear: defaults.dumpClear_s.value, toFill: ROAD_S,
    fillPosition: defaults.fillPosition_s.value, fill: (usable_gal / defaults.tenderFillLimit_gpm.value) * perMinute, fillClear: defaults.fillClear_s.value, toDump: ROAD_S,
  })
}

const atLeast = (times: TripTimes): TripTimes => Object.fromEntries(tripStages.map((stage) => [stage, Math.max(LEAST_S, times[stage])])) as Record<TripStage, number>

/** How long each stage took where both its ends were logged; positions hold the waiting before them. */
export function loggedTimes(stays: readonly Stay[]): Record<TripStage, number[]> {
  const found = noTimes()
  for (const [k, stay] of stays.entries()) {
    const marks = tenderSteps[stay.place] as readonly Mark[]
    marks.forEach((mark, step) => {
      const stage = stageUpTo[stay.place][mark]
      const before = marks[step - 1]
      if (stage && before && stay.seen.has(mark) && stay.seen.has(before)) found[stage].push(stay.times_s[mark]! - stay.times_s[before]!)
    })
    const next = stays[k + 1]
    if (next && stay.seen.has('left') && next.seen.has('arrived')) found[next.place === 'fill' ? 'toFill' : 'toDump'].push(next.times_s.arrived! - stay.times_s.left!)
  }
  return found
}

/** Positions hold waiting, which is nobody's usual time. */
const measurable: readonly TripStage[] = ['dump', 'dumpClear', 'toFill', 'fill', 'fillClear', 'toDump']
const OWN_LEAST = 2
const ALL_LEAST = 3

/** The plan's times with those of the log in their place: the tender's own middle of two or more, else that of all of three or more. */
export function refinedTimes(planned: TripTimes, own: Record<TripStage, number[]>, all: Record<TripStage, number[]>): TripTimes {
  const times: Record<TripStage, number> = { ...planned }
  for (const stage of measurable) {
    const taken = own[stage].length >= OWN_LEAST ? own[stage] : all[stage].length >= ALL_LEAST && (stage === 'dumpClear' || stage === 'fillClear') ? all[stage] : undefined
    if (taken) times[stage] = Math.max(LEAST_S, middleOf(taken))
  }
  return times
}
