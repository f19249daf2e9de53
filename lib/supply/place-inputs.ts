import type { Evidence } from '../evidence'
import type { Unit } from '../units'
import type { BackUpInput } from './back-up-input'
import type { DraftSheet } from './draft-sheet'
import { numberKey } from './ledger'
import { spreadOfEntered } from './spread'

/** The numbers of the place that a back-up prime stands on: lift, what the season adds to it, air, water, hard suction. */
export function placeInputs({ ledger, lift, drop, source, draftSite, district, pump, place, suction }: DraftSheet): readonly BackUpInput[] {
  const fallField = drop.counted === 'drought' && source?.droughtDrop_ft === lift.drop_ft ? 'droughtDrop_ft' : 'seasonalDrop_ft'
  const fall = source?.evidence?.[fallField]
  const water = source?.water_degF === undefined ? district : source
  return [
    taken('lift_ft', 'ft', lift.lift_ft - lift.drop_ft, draftSite.id),
    ...(lift.drop_ft > 0 ? [ranged(fallField, 'ft', lift.drop_ft, spreadOfEntered(fall, fallField), { mark: fall?.mark ?? 'assumed', source: fall?.source ?? '' })] : []),
    taken('altitude_ft', 'ft', place.altitude_ft, district.id),
    water.id === district.id ? taken('water_degF', 'degF', place.water_degF, district.id) : entered('water_degF', 'degF', place.water_degF, source?.water_degF, source?.evidence?.water_degF),
    taken('suction_in', 'in', suction.size_in, pump.id),
    draftSite.hoseRun_ft === suction.length_ft ? entered('suction_ft', 'ft', suction.length_ft, draftSite.hoseRun_ft, draftSite.evidence?.hoseRun_ft) : taken('suction_ft', 'ft', suction.length_ft, pump.id),
  ]

  /** As the ledger has it, unless another value was tried in its place. */
  function taken(symbol: string, unit: Unit, value: number, itemId: string): BackUpInput {
    const key = numberKey(itemId, symbol)
    const noted = ledger.numbers.get(key)
    if (!noted || noted.value !== value) return tried(symbol, unit, value)
    return ranged(symbol, unit, value, noted.spreadShare, { mark: noted.mark, source: ledger.assumptions.get(key)?.source ?? '' })
  }
}

const tried = (symbol: string, unit: Unit, value: number): BackUpInput => ({ symbol, unit, value, low: value, high: value, mark: 'assumed', source: 'tried on this sheet' })

function entered(symbol: string, unit: Unit, value: number, known: number | undefined, evidence: Evidence | undefined): BackUpInput {
  if (known !== value) return tried(symbol, unit, value)
  return ranged(symbol, unit, value, spreadOfEntered(evidence, symbol), { mark: evidence?.mark ?? 'assumed', source: evidence?.source ?? '' })
}

function ranged(symbol: string, unit: Unit, value: number, spreadShare: number, known: Pick<BackUpInput, 'mark' | 'source'>): BackUpInput {
  const ends = [value * (1 - spreadShare), value * (1 + spreadShare)]
  return { symbol, unit, value, low: Math.min(...ends), high: Math.max(...ends), ...known }
}
