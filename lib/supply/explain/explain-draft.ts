import { FIELD_RULE_COVER_FT, atmosphericHead_ft, requiredHead_ft, suctionLossAt1000gpm_ft, vaporHead_ft, velocityHead_ft, type DraftCapacity, type SuctionSetup } from '../../hydraulics'
import { inchesOfMercuryFromFeetOfWater } from '../../units'
import { defaults } from '../defaults'
import type { DraftSheet } from '../draft-sheet'
import type { Working, WorkingInput } from '../working'
import { explainLiftOf } from './explain-lift'
import { computed, given, worked, working } from './inputs'

const LIFT_LAW = 'lift law calibrated on one cell of the classical lift table (590 gpm at 20 ft, seen)'
const LOSS_TABLE = 'hard suction loss, NFPA 1901 and handbook table (common figures, not checked against a published table); scales with the flow squared'
const HYDRANT_SHEET = 'NRCS design sheet NE-ENG-76, 2004'

type Drawn = { readonly capacity: DraftCapacity; readonly suction: SuctionSetup }

/** Flow of the sheet's pumper through a set-up, down to what was entered. */
export function explainDraw(sheet: DraftSheet, { capacity, suction }: Drawn = sheet): Working {
  const { ledger, pump, netPressure_psi } = sheet
  const inputs: WorkingInput[] = capacity.limitedBy === 'pump'
    ? [given(ledger, pump, 'rated_gpm', pump.rated_gpm ?? 0), computed('netPressure_psi', netPressure_psi, 'asked of the pump'), computed('suctionSide_gpm', capacity.suctionSide_gpm)]
    : [
      worked('availableHead_ft', explainAvailableHead(sheet)),
      worked('suctionLoss_ft', explainSuctionLoss(sheet, { capacity, suction })),
      worked('requiredHead_ft', explainRequiredHead(sheet, capacity)),
      computed('margin_ft', capacity.margin_ft),
      computed('pumpSide_gpm', capacity.pumpSide_gpm, 'the pump’s curve at the net pressure asked'),
    ]
  return working(capacity.limitedBy === 'pump' ? 'draft-pump-side' : 'draft-suction-side', 'flow_gpm', capacity.flow_gpm, LIFT_LAW, inputs)
}

/** Lift as the sheet takes it, with the fall of the season. */
export function explainLift(sheet: DraftSheet): Working {
  const { ledger, lift, draftSite } = sheet
  return explainLiftOf(sheet, (usual_ft) => (lift.from === 'plan' ? computed('lift_ft', usual_ft, 'typed on this sheet') : given(ledger, draftSite, 'lift_ft', usual_ft)))
}

/** Head left for hose and pump: air less vapor less lift. */
export function explainAvailableHead(sheet: DraftSheet): Working {
  const { ledger, district, source, place, capacity } = sheet
  const water = source?.water_degF === undefined ? district : source
  return working('available-head', 'availableHead_ft', capacity.availableHead_ft, '', [
    worked('air_ft', working('air-head', 'air_ft', atmosphericHead_ft(place.altitude_ft, place.barometer_inHg), 'standard atmosphere (ISA), shifted by the barometer', [
      chosen(given(ledger, district, 'altitude_ft', place.altitude_ft), place.altitude_ft === (district.altitude_ft ?? defaults.altitude_ft.value)),
      ...(place.barometer_inHg === undefined ? [] : [chosen(given(ledger, district, 'barometer_inHg', place.barometer_inHg), place.barometer_inHg === district.barometer_inHg)]),
    ])),
    worked('vapor_ft', working('vapor-head', 'vapor_ft', vaporHead_ft(place.water_degF), 'IAPWS saturation equation', [
      chosen(given(ledger, water, 'water_degF', place.water_degF), place.water_degF === (source?.water_degF ?? district.water_degF ?? defaults.water_degF.value)),
    ])),
    worked('lift_ft', explainLift(sheet)),
  ])
}

/** An input typed on the sheet in place of the known one is of nobody's measuring. */
const chosen = (input: WorkingInput, isKnown: boolean): WorkingInput =>
  (isKnown ? input : { ...input, from: { itemId: '', field: input.symbol, mark: 'assumed', source: 'tried on this sheet' } })

/** Loss from the strainer to the pump. */
export function explainSuctionLoss({ ledger, pump, draftSite }: DraftSheet, { capacity, suction }: Drawn): Working {
  const { size_in, length_ft, lineCount, dryHydrant, intakeExtraAt1000gpm_ft } = suction
  return working(dryHydrant ? 'suction-loss-hydrant' : 'suction-loss', 'suctionLoss_ft', capacity.suctionLoss_ft, dryHydrant ? `${HYDRANT_SHEET}; ${LOSS_TABLE}` : LOSS_TABLE, [
    computed('flow_gpm', capacity.flow_gpm),
    computed('suctionLossAt1000gpm_ft', suctionLossAt1000gpm_ft(suction)),
    ...('suction_in' in pump && pump.suction_in === size_in ? [given(ledger, pump, 'suction_in', size_in)] : [computed('size_in', size_in)]),
    ...(draftSite.hoseRun_ft === length_ft ? [given(ledger, draftSite, 'hoseRun_ft', length_ft)] : [computed('length_ft', length_ft)]),
    computed('lineCount', lineCount),
    ...(dryHydrant ? [
      given(ledger, draftSite, 'dryHydrant.pipe_in', dryHydrant.pipe_in, 'pipe_in'),
      given(ledger, draftSite, 'dryHydrant.pipe_ft', dryHydrant.length_ft, 'pipe_ft'),
      computed('elbow90Count', dryHydrant.elbow90Count ?? 0),
      computed('elbow45Count', dryHydrant.elbow45Count ?? 0),
    ] : []),
    ...(intakeExtraAt1000gpm_ft === undefined ? [] : [given(ledger, pump, 'intakeLoss_ft', intakeExtraAt1000gpm_ft)]),
  ])
}

/** Head the pump needs at its intake, and what that rests on. */
function explainRequiredHead({ ledger, pump, required }: DraftSheet, { flow_gpm }: DraftCapacity): Working {
  return working(`required-head-${required.basis}`, 'requiredHead_ft', requiredHead_ft(required, flow_gpm), LIFT_LAW, [
    computed('flow_gpm', flow_gpm),
    given(ledger, pump, 'rated_gpm', pump.rated_gpm ?? 0),
    computed('requiredAtRest_ft', required.a_ft),
    computed('requiredMore_ft', required.b_ft),
    ...(pump.dryVacuum_inHg === undefined || required.basis !== 'dry-vacuum' ? [] : [given(ledger, pump, 'dryVacuum_inHg', pump.dryVacuum_inHg)]),
    ...(required.basis === 'test-points' ? [computed('testPointCount', pump.testPoints?.length ?? 0, 'annual test')] : []),
  ])
}

/** What the intake gauge reads at the top of its range; the bottom lies a velocity head lower. */
export function explainGauge(sheet: DraftSheet, { capacity, suction } : Drawn = sheet): Working {
  return working('gauge-range', 'vacuum_inHg', capacity.vacuumHigh_inHg, 'lift and loss, and up to one velocity head more: the place of the gauge’s tap is not known', [
    worked('lift_ft', explainLift(sheet)),
    worked('suctionLoss_ft', explainSuctionLoss(sheet, { capacity, suction })),
    computed('velocityHead_ft', velocityHead_ft(capacity.flow_gpm / suction.lineCount, suction.size_in)),
    computed('vacuumLow_inHg', inchesOfMercuryFromFeetOfWater(Math.max(0, sheet.place.lift_ft + capacity.suctionLoss_ft))),
  ])
}

/** Cover wanted over the strainer. */
export function explainCover(_sheet: DraftSheet, { capacity, suction }: Drawn): Working | undefined {
  const cover = capacity.strainerCover
  if (!cover) return undefined
  return working('cover', 'advisedCover_ft', cover.advised_ft, 'ANSI/HI 9.8 as quoted in an engineering note, not checked against the standard; 2 ft: NRCS and handbook', [
    computed('flow_gpm', capacity.flow_gpm / suction.lineCount),
    computed('size_in', suction.size_in),
    computed('vortexCover_ft', cover.vortex_ft),
    computed('ruleCover_ft', FIELD_RULE_COVER_FT),
  ])
}
