import { hoseVolume_gal } from '../hydraulics'
import { requireNotNegative, requirePositive } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import type { LaySegment } from './spec'

/** How hose is laid, and how fast. None of it has a published source: measure your own in a drill. */
export type LayingRates = {
  /** Laid from a moving bed along a road: one line. */
  readonly bed_ftPerMin?: number
  /** Carried and coupled by hand, by one person. */
  readonly handOne_ftPerMin?: number
  /** To hook a pumper up, its operator alone; all pumpers at once. */
  readonly hookUp_s?: number
  /** From water at its intake until a pumper holds its pressure. */
  readonly throttle_s?: number
  /** To put up a hose bridge, or a pair of ramps, at a road crossing. */
  readonly bridge_s?: number
  readonly ramp_s?: number
  /** Hose is filled this gently, so that air gets out and couplings hold. */
  readonly fill_gpm?: number
}

/** Assumed, no source: a bed at walking pace, a person with 100 ft of hose in five minutes. */
const assumedRates: Required<LayingRates> = { bed_ftPerMin: 250, handOne_ftPerMin: 20, hookUp_s: 180, throttle_s: 30, bridge_s: 180, ramp_s: 60, fill_gpm: 300 }

/** Hose is laid in teams of two: one alone neither carries nor couples large hose well. Assumed. */
const TEAM_COUNT = 2

export type SetUpAsk = {
  readonly lay: readonly LaySegment[]
  /** Which segments a vehicle lays; the rest is carried by hand. Default all by vehicle. */
  readonly isByHand?: readonly boolean[]
  /** Vehicles that lay at the same time; default 1. */
  readonly bedCount?: number
  /** People at hand for laying, beside one operator a pumper. */
  readonly crewCount: number
  readonly pumperCount: number
  /** Until the source pumper drafts: set-up and priming. */
  readonly sourceReady_s: number
  readonly flow_gpm: number
  /** Road crossings by how the hose is kept from wheels. */
  readonly crossings?: { readonly bridgeCount: number; readonly rampCount: number }
  readonly rates?: LayingRates
}

/** Seconds of each part, and until the flow stands at the far end. */
export type SetUpTime = {
  readonly lay_s: number
  readonly hookUp_s: number
  readonly sourceReady_s: number
  readonly fill_s: number
  readonly throttle_s: number
  readonly ready_s: number
  readonly hose_ft: number
  readonly hose_gal: number
  /** Teams of two that lay by hand. */
  readonly teamCount: number
}

/**
 * Time from everything on the spot until the relay stands at its flow.
 *
 *   ready = max(lay, hook-up, source ready) + hose volume / filling flow + throttle · pumpers
 *   lay = Σ bed length · lines / (rate · vehicles) + Σ hand length · lines / (rate of one · people in teams of two) + crossings
 *
 * Hose by vehicle and hose by hand are laid one after the other: the same people do both. Driving to the spot is not in it.
 *
 * @param ask lay, people, pumpers
 * @returns seconds; with fewer than two people for it, hose by hand is laid by two of the operators
 * @throws RangeError if a number is out of range
 * @source own; rates assumed, no source
 */
export function setUpTime({ lay, isByHand = [], bedCount = 1, crewCount, pumperCount, sourceReady_s, flow_gpm, crossings = { bridgeCount: 0, rampCount: 0 }, rates }: SetUpAsk): SetUpTime {
  const { bed_ftPerMin, handOne_ftPerMin, hookUp_s, throttle_s, bridge_s, ramp_s, fill_gpm } = { ...assumedRates, ...rates }
  for (const [name, value] of Object.entries({ bed_ftPerMin, handOne_ftPerMin, fill_gpm, bedCount, flow_gpm })) requirePositive(name, value)
  for (const [name, value] of Object.entries({ crewCount, pumperCount, sourceReady_s, hookUp_s, throttle_s })) requireNotNegative(name, value)
  const teamCount = Math.max(1, Math.floor(crewCount / TEAM_COUNT))
  let bed_ft = 0, hand_ft = 0, hose_gal = 0
  lay.forEach(({ length_ft, lines }, i) => {
    if (isByHand[i]) hand_ft += length_ft * lines.length
    else bed_ft += length_ft * lines.length
    for (const { size_in } of lines) hose_gal += hoseVolume_gal(size_in, length_ft)
  })
  const lay_s = SECONDS_PER_MINUTE * (bed_ft / (bed_ftPerMin * bedCount) + hand_ft / (handOne_ftPerMin * teamCount * TEAM_COUNT)) + crossings.bridgeCount * bridge_s + crossings.rampCount * ramp_s
  const fill_s = SECONDS_PER_MINUTE * (hose_gal / Math.min(fill_gpm, flow_gpm))
  const raise_s = throttle_s * pumperCount
  return { lay_s, hookUp_s, sourceReady_s, fill_s, throttle_s: raise_s, ready_s: Math.max(lay_s, hookUp_s, sourceReady_s) + fill_s + raise_s, hose_ft: bed_ft + hand_ft, hose_gal, teamCount }
}
