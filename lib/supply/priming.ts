import type { Pumper } from '../plan'
import { primeTime, type Primer, type PrimeTime } from '../priming'
import { atmosphericHead_ft } from '../hydraulics'
import { feetOfWaterFromInchesOfMercury } from '../units'
import { backUpInputs } from './back-up-inputs'
import type { DraftSheet } from './draft-sheet'
import { computed, given, working } from './explain/inputs'
import type { Working } from './working'

/** What stands behind the primer's capacity. */
export type PrimerFrom = 'primer' | 'measured-time' | 'assumed'

export type Priming = { readonly time: PrimeTime; /** Free air the primer moves. */ readonly capacity_gpm: number; readonly primerFrom: PrimerFrom; readonly getWorking: () => Working | undefined }

/** A primer in order holds this much: the standard's 22 inHg and a little more. Judgement. */
const STALL_INHG = 24
/** Air a usual rotary primer moves free; as the drill's. Judgement. */
const PRIMER_GPM = 140
/** The conditions a priming time is taken at, where nobody has said: the lift of the rating. */
const TEST_LIFT_FT = 10

/**
 * Time that a pumper's own primer needs at a draft site.
 *
 * Its capacity is the entered one, else the one that gives its last priming time at the rating lift through its own hose, else a usual one.
 *
 * @returns the time against the limits, what the primer's figure stands on, and the working
 */
export function primingOf(sheet: DraftSheet, pump: Pumper): Priming {
  const { rig, site } = backUpInputs(pump, sheet)
  const { suction, ledger, pumper } = sheet
  const dry_inHg = pump.dryVacuum_inHg ?? STALL_INHG
  const stall_ft = Math.min(feetOfWaterFromInchesOfMercury(dry_inHg), site.atmosphere_ft)
  const intake = suction.intake ?? 'side'
  const ask = (primer: Primer, lift_ft: number, atmosphere_ft: number) => primeTime({
    primer, lift_ft, atmosphere_ft, hose_gal: rig.hose_gal, pump_gal: rig.pump_gal, rated_gpm: pumper.rated_gpm,
    ...(pump.pumpTop_ft !== undefined && { pumpTop_ft: pump.pumpTop_ft }),
    ...(intake !== 'side' && { hasAuxiliaryIntake: true, auxiliary_gal: AUXILIARY_GAL }),
  })
  const entered = pump.primer_gpm !== undefined && pump.primer_gpm > 0 ? pump.primer_gpm : undefined
  const fromTime = entered === undefined && pump.priming_s !== undefined && pump.priming_s > 0 ? capacityFrom(pump.priming_s) : undefined
  const capacity_gpm = entered ?? fromTime ?? PRIMER_GPM
  const primerFrom: PrimerFrom = entered !== undefined ? 'primer' : fromTime !== undefined ? 'measured-time' : 'assumed'
  const time = ask({ capacity_gpm, stall_ft }, site.lift_ft, site.atmosphere_ft)
  return {
    time, capacity_gpm, primerFrom,
    getWorking: () => (time.expected_s === undefined ? undefined : working('prime-time', 'expected_s', time.expected_s, 'volume to exhaust over net primer capacity at that lift (pump handbook page, seen), integrated', [
      computed('air_gal', time.air_gal, 'hose, intake piping and pump'),
      computed('vacuum_ft', time.vacuum_ft),
      primerFrom === 'primer' ? given(ledger, pump, 'primer_gpm', capacity_gpm)
        : { symbol: 'primer_gpm', value: capacity_gpm, unit: 'gpm', from: { itemId: pump.id, field: 'primer_gpm', mark: primerFrom === 'measured-time' ? 'computed' : 'assumed', source: primerFrom === 'measured-time' ? 'what gives the last priming time, at 10 ft and sea level' : 'a usual primer; no source' } },
      pump.dryVacuum_inHg === undefined
        ? { symbol: 'dryVacuum_inHg', value: dry_inHg, unit: 'inHg', from: { itemId: pump.id, field: 'dryVacuum_inHg', mark: 'assumed', source: 'a primer in order' } }
        : given(ledger, pump, 'dryVacuum_inHg', dry_inHg),
    ])),
  }

  /** Time goes as one over the capacity, so one trial gives it. */
  function capacityFrom(priming_s: number): number | undefined {
    const sea_ft = atmosphericHead_ft(0)
    const trial = ask({ capacity_gpm: PRIMER_GPM, stall_ft: Math.min(feetOfWaterFromInchesOfMercury(dry_inHg), sea_ft) }, TEST_LIFT_FT, sea_ft)
    return trial.expected_s === undefined ? undefined : (PRIMER_GPM * trial.expected_s) / priming_s
  }
}

/** Piping of a front or rear intake: 15 ft of 5 in. Judgement; from one cubic foot on the standard allows 15 s more. */
const AUXILIARY_GAL = 15
