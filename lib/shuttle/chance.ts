import { triangular, uniform } from '../random'
import type { ChanceTable, Scenario } from './scenario'
import { tripStages, type ShuttleSpec, type Spread, type SpreadRange } from './spec'

/** Place of each stage in the table, and its purpose of chance. */
export const STAGE = { dumpPosition: 0, dump: 1, dumpClear: 2, toFill: 3, fillPosition: 4, fill: 5, fillClear: 6, toDump: 7 } as const
const STAGES = tripStages.length
const NIGHT = 100

/** An id as the address of its chance, so that adding a tender leaves the draws of the others alone (FNV-1a). */
export function entityOf(id: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < id.length; i++) hash = Math.imul(hash ^ id.charCodeAt(i), 0x01000193)
  return hash | 0
}

/**
 * Tables of chance, or none when nothing varies.
 *
 * @param isExponential every stage takes an exponential time with the planned mean: for
 *   checks against queueing theory, no model of a shuttle
 */
export function chanceTableFor(spec: ShuttleSpec, isExponential: boolean): ChanceTable | undefined {
  const varies = spec.tenders.some(({ spread }) => spread) || spec.fills.some(({ spread }) => spread)
  const isKnown = spec.tenders.some(({ tripFactors }) => tripFactors)
  if (!varies && !isKnown && !isExponential) return undefined
  const spreads = spec.tenders.flatMap(({ spread }) => tripStages.map((stage) => spread?.[stage]))
  const fillSpreads = spec.fills.map(({ spread }) => spread?.fill)
  return {
    law: isExponential ? 'exponential' : 'triangular',
    tenderEntity: Int32Array.from(spec.tenders, ({ id }) => entityOf(id)),
    night: rangesOf(spreads, 'night'),
    trip: rangesOf(spreads, 'trip'),
    fillEntity: Int32Array.from(spec.fills, ({ id }) => entityOf(id)),
    fillNight: rangesOf(fillSpreads, 'night'),
    fillTrip: rangesOf(fillSpreads, 'trip'),
    known: isKnown ? spec.tenders.flatMap(({ tripFactors }) => tripStages.map((stage) => tripFactors?.[stage])) : undefined,
  }
}

function rangesOf(spreads: readonly (Spread | undefined)[], field: 'night' | 'trip'): Float64Array {
  const ranges = new Float64Array(3 * spreads.length).fill(1)
  // Compiled for every night of thousands: written in place.
  for (let row = 0; row < spreads.length; row++) {
    const range: SpreadRange | undefined = spreads[row]?.[field]
    if (!range) continue
    ranges[3 * row] = range.lowFactor
    ranges[3 * row + 1] = range.modeFactor
    ranges[3 * row + 2] = range.highFactor
  }
  return ranges
}

function drawFrom(table: Float64Array, row: number, seed: number, entity: number, purpose: number, count: number): number {
  const low = table[row * 3]!
  const high = table[row * 3 + 2]!
  if (low === high) return low
  return triangular(uniform(seed, entity, purpose, count), low, table[row * 3 + 1]!, high)
}

/** Factor on the planned time of a tender's stage, the count-th time it comes to it: what is known of that trip, times chance. */
export function stageFactor(scenario: Scenario, chance: ChanceTable, tender: number, stage: number, count: number): number {
  const entity = chance.tenderEntity[tender]!
  if (chance.law === 'exponential') return -Math.log(1 - uniform(scenario.seed, entity, stage, count))
  const row = tender * STAGES + stage
  const known = chance.known?.[row]
  const factor = known === undefined ? 1 : known.each[count] ?? known.then
  return factor * drawFrom(chance.trip, row, scenario.seed, entity, stage, count) * drawFrom(chance.night, row, scenario.seed, entity, NIGHT + stage, 0)
}

/** Factor of the fill site itself on the time of a tender's count-th filling. */
export function fillSiteFactor(scenario: Scenario, chance: ChanceTable, fill: number, tender: number, count: number): number {
  const entity = chance.fillEntity[fill]!
  const night = drawFrom(chance.fillNight, fill, scenario.seed, entity, NIGHT + STAGE.fill, 0)
  // The tender is part of the address, so that who comes before it does not change its draw.
  return night * drawFrom(chance.fillTrip, fill, scenario.seed, entity ^ chance.tenderEntity[tender]!, STAGE.fill, count)
}
