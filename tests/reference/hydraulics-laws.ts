import * as demand from '@/lib/demand'
import * as hydraulics from '@/lib/hydraulics'
import { PASCALS_PER_PSI, SECONDS_PER_MINUTE, fahrenheitFromCelsius, feetFromMetres, feetOfWaterFromInchesOfMercury, inchesOfMercuryFromFeetOfWater, metresFromFeet } from '@/lib/units'
import type { Given } from './reference-case'

const constructions = ['I', 'II', 'III', 'IV', 'V'] as const
const s = SECONDS_PER_MINUTE

/** A pumper with nothing known but its rating, drafting in the classical table's conditions. */
function atDraft(g: Given): hydraulics.DraftCapacity {
  return hydraulics.draftCapacity({
    pumper: { rated_gpm: g.number('rated_gpm') },
    suction: { size_in: g.number('size_in', 5), length_ft: g.number('length_ft', 20), lineCount: 1 },
    place: { lift_ft: g.number('lift_ft', 0), altitude_ft: g.number('altitude_ft', 1000), water_degF: 60 },
    ask: { netPressure_psi: 150 },
  })
}

function hardSuction(g: Given, length_ft: number): number {
  return hydraulics.hardSuctionLoss_ft({ size_in: g.number('size_in'), lineCount: g.number('lineCount', 1), flow_gpm: g.number('flow_gpm'), length_ft })
}

function building(g: Given): Pick<demand.Building, 'length_ft' | 'width_ft' | 'storeyHeights_ft' | 'ridge_ft'> {
  return { length_ft: g.number('length_ft'), width_ft: g.number('width_ft'), storeyHeights_ft: g.numbers('storeys'), ridge_ft: g.number('ridge_ft') }
}

function occupancy(g: Given): demand.OccupancyClass {
  const found = ([3, 4, 5, 6, 7] as const).find((one) => one === g.number('occupancyClass'))
  if (!found) throw new Error('occupancyClass must be 3 to 7')
  return found
}

/** Each law a case may name, as a function of what the case gives. Units are those of the case. */
export const laws: Readonly<Record<string, (g: Given) => number>> = {
  atmosphericPressure_psi: (g) => hydraulics.atmosphericPressure_psi(g.number('altitude_ft')),
  atmosphericPressure_inHg: (g) => inchesOfMercuryFromFeetOfWater(hydraulics.atmosphericHead_ft(g.number('altitude_ft'))),
  atmosphericHead_ft: (g) => hydraulics.atmosphericHead_ft(g.number('altitude_ft')),
  atmosphericPressure_kPa: (g) => (hydraulics.atmosphericPressure_psi(feetFromMetres(g.number('altitude_m'))) * PASCALS_PER_PSI) / 1000,
  atmosphericHead_m: (g) => metresFromFeet(hydraulics.atmosphericHead_ft(feetFromMetres(g.number('altitude_m')))),
  altitudeLoss_ft: (g) => hydraulics.atmosphericHead_ft(g.number('from_ft')) - hydraulics.atmosphericHead_ft(g.number('to_ft')),
  altitudeLossPressure_psi: (g) => hydraulics.atmosphericPressure_psi(g.number('from_ft')) - hydraulics.atmosphericPressure_psi(g.number('to_ft')),
  vacuumHead_ft: (g) => feetOfWaterFromInchesOfMercury(g.number('vacuum_inHg')),

  vaporPressure_psi: (g) => hydraulics.vaporPressure_psi(g.number('water_degF')),
  vaporPressure_bar: (g) => (hydraulics.vaporPressure_psi(fahrenheitFromCelsius(g.number('water_degC'))) * PASCALS_PER_PSI) / 1e5,
  vaporHead_ft: (g) => hydraulics.vaporHead_ft(g.number('water_degF')),
  warmWaterLoss_ft: (g) => hydraulics.vaporHead_ft(g.number('to_degF')) - hydraulics.vaporHead_ft(g.number('from_degF')),
  waterDensity_lbPerCuft: (g) => hydraulics.waterDensity_lbPerCuft(g.number('water_degF')),
  boilingPoint_degF: (g) => hydraulics.boilingPoint_degF(g.number('pressure_psi')),

  hardSuctionLoss_ft: (g) => hardSuction(g, g.number('length_ft')),
  suctionMore_ft: (g) => hardSuction(g, g.number('length_ft') + 10) - hardSuction(g, g.number('length_ft')),
  suctionFriction_ft: (g) => hardSuction(g, g.number('length_ft')) - hardSuction(g, 0),
  velocityHead_ft: (g) => hydraulics.velocityHead_ft(g.number('flow_gpm'), g.number('bore_in')),
  hoseVolume_gal: (g) => hydraulics.hoseVolume_gal(g.number('size_in'), g.number('length_ft')),

  dryHydrantPipeLoss_ftPer100ft: (g) => hydraulics.dryHydrantPipeLoss_ftPer100ft(g.number('flow_gpm'), g.number('pipe_in')),
  dryHydrantStrainerLoss_ft: (g) => hydraulics.dryHydrantStrainerLoss_ft(g.number('flow_gpm')),
  dryHydrantHead_ft: (g) => g.number('static_ft') + hydraulics.dryHydrantLoss_ft({ pipe_in: g.number('pipe_in'), length_ft: g.number('length_ft'), elbow45Count: g.number('elbow45Count') }, g.number('flow_gpm')),

  velocity_ftPerS: (g) => hydraulics.velocity_ftPerS(g.number('flow_gpm'), g.number('bore_in')),
  vortexSubmergence_in: (g) => hydraulics.vortexSubmergence_ft(g.number('flow_gpm'), g.number('bore_in')) * 12,

  suctionSide_gpm: (g) => atDraft(g).suctionSide_gpm,
  suctionShare: (g) => atDraft(g).suctionSide_gpm / g.number('rated_gpm'),
  ratedDischarge_psi: (g) => atDraft(g).discharge_psi,
  zeroFlowLift_ft: (g) => atDraft(g).zeroFlowLift_ft,
  zeroFlowLiftLoss_ft: (g) => hydraulics.atmosphericHead_ft(0) - hydraulics.atmosphericHead_ft(g.number('altitude_ft')),
  pressureCorrection_psi: (g) => hydraulics.pressureCorrection_psi(g.number('lift_ft'), g.number('suctionLoss_ft')),
  curveFlow_gpm: (g) => hydraulics.curveFlow_gpm(hydraulics.pumpCurve(g.number('rated_gpm')), g.number('netPressure_psi')),

  frictionLoss_psi: (g) => hydraulics.frictionLoss_psi(g.number('coefficient'), g.number('flow_gpm'), g.number('length_ft')),
  flowForLoss_gpm: (g) => hydraulics.flowForLoss_gpm(g.number('coefficient'), g.number('loss_psi'), g.number('length_ft')),
  lengthForLoss_ft: (g) => hydraulics.lengthForLoss_ft(g.number('coefficient'), g.number('flow_gpm'), g.number('loss_psi')),
  coefficientFromTest: (g) => hydraulics.coefficientFromTest(g.number('flow_gpm'), g.number('length_ft'), g.number('loss_psi')),
  hoseCoefficient: (g) => hydraulics.hoseCoefficient(g.number('size_in')).coefficient,
  parallelCoefficient: (g) => hydraulics.parallelCoefficient(g.numbers('coefficients')),
  olderFrictionLoss_psi: (g) => hydraulics.olderFrictionLoss_psi(g.number('flow_gpm'), g.number('length_ft')),
  relayLength_ft: (g) => hydraulics.lengthForLoss_ft(hydraulics.parallelCoefficient(g.numbers('coefficients')), g.number('flow_gpm'), g.number('loss_psi')),
  elevation_psi: (g) => hydraulics.elevation_psi(g.number('rise_ft')),
  applianceLoss_psi: (g) => hydraulics.applianceLoss_psi(g.choice('kind', ['fitting', 'master-stream']), g.number('flow_gpm')),
  workingPressure_psi: (g) => hydraulics.workingPressure_psi(g.number('serviceTest_psi')),
  defaultWorkingPressure_psi: (g) => hydraulics.defaultWorkingPressure_psi(g.number('size_in')),

  handFigure_gpm: (g) => hydraulics.handFigure_gpm([{ tank_gal: g.number('tank_gal'), fill_s: s * g.number('fill_min'), travel_s: s * g.number('travel_min'), dump_s: s * g.number('dump_min') }]),
  lessonFigure_gpm: (g) => hydraulics.handFigure_gpm([{ tank_gal: g.number('tank_gal'), fill_s: s * g.number('handling_min'), travel_s: hydraulics.handbookTravel_s(g.number('distance_mi')), dump_s: 0 }]),
  annexFigure_gpm: (g) => hydraulics.annexFigure_gpm({ tank_gal: g.number('tank_gal'), dump_s: s * g.number('dump_min'), toFill_s: s * g.number('toFill_min'), toDump_s: s * g.number('toDump_min'), fill_s: s * g.number('fill_min') }),
  handbookTravel_min: (g) => hydraulics.handbookTravel_s(g.number('distance_mi')) / s,
  travelSlope_minPerMi: (g) => (hydraulics.handbookTravel_s(2, g.number('average_mph')) - hydraulics.handbookTravel_s(1, g.number('average_mph'))) / s,
  roundTripMinusLesson_min: (g) => (hydraulics.handbookRoundTrip_s(g.number('leg_mi')) - hydraulics.handbookTravel_s(2 * g.number('leg_mi'))) / s,

  smoothBoreFlow_gpm: (g) => hydraulics.smoothBoreFlow_gpm(g.number('tip_in'), g.number('nozzlePressure_psi')),
  jetSiphonTransfer_gpm: (g) => hydraulics.jetSiphonFlow({
    tube_in: g.number('tube_in'), jet_in: g.number('jet_in', 0.75), drive_psi: g.number('drive_psi'), fall_ft: g.number('fall_ft', 0),
    entryHeads: g.number('entryHeads', 0.5), tubeHeads: g.number('tubeHeads', 1),
  }).transfer_gpm,
  gravityDump_gpm: (g) => hydraulics.gravityDump_gpm({ diameter_in: g.number('diameter_in') }, g.number('head_ft')),
  hydrantFactor: (g) => hydraulics.hydrantAvailableFlow_gpm({ static_psi: g.number('toTwenty_psi') + 20, residual_psi: g.number('toTwenty_psi') + 20 - g.number('inTest_psi'), flow_gpm: 1 }),
  hydrantPitotFlow_gpm: (g) => hydraulics.hydrantPitotFlow_gpm(g.number('outlet_in'), g.number('pitot_psi'), g.choice('outlet', ['smooth', 'square', 'projecting'])),

  streamFlow_gpm: (g) => hydraulics.streamFlow_gpm(g.number('width_ft'), g.number('depth_ft'), g.number('surface_ftPerS'), g.number('factor')),
  floatFactor: (g) => hydraulics.floatFactor(g.number('depth_ft')),
  drawdownLasts_s: (g) => hydraulics.drawdown({ usable_gal: g.number('usable_gal'), inflow_gpm: g.number('inflow_gpm', 0), draw_gpm: g.number('draw_gpm') }).lasts_s ?? Infinity,
  // The bore drops out: a flow that has this speed in 6 in.
  inletLoss_ft: (g) => g.number('heads') * hydraulics.velocityHead_ft((1000 * g.number('speed_ftPerS')) / hydraulics.velocity_ftPerS(1000, 6), 6),
  pondLens_gal: (g) => hydraulics.pondLens_gal(g.number('acres') * hydraulics.SQUARE_FEET_PER_ACRE, g.number('usable_ft')),
  farmPond_gal: (g) => hydraulics.farmPond_gal(g.number('acres') * hydraulics.SQUARE_FEET_PER_ACRE, g.number('greatest_ft')),

  buildingVolume_cuft: (g) => demand.buildingVolume_cuft(building(g)),
  ruralSupply_gal: (g) => demand.ruralSupply_gal({
    volume_cuft: g.number('volume_cuft'), occupancyClass: occupancy(g), construction: g.choice('construction', constructions),
    isDwelling: g.isTrue('isDwelling'), hasExposure: g.isTrue('hasExposure'), dwellingRule: g.choice('dwellingRule', ['capped', 'full']),
  }),
  ruralDelivery_gpm: (g) => demand.ruralDelivery_gpm(g.number('supply_gal')),
  academyFlow_gpm: (g) => demand.academyFlow_gpm(g.number('area_sqft'), 1, g.number('involvedShare'), g.number('exposureCount', 0)),
  iowaFlow_gpm: (g) => demand.iowaFlow_gpm(g.number('volume_cuft')),
  instituteFlow_gpm: (g) => demand.instituteFlow_gpm(g.number('area_sqft'), g.isTrue('isResidential')),
  constructionFlow_gpm: (g) => demand.constructionFlow_gpm(g.number('area_sqft'), g.choice('construction', constructions)),
  ratingFlow_gpm: (g) => demand.ratingFlow_gpm(g.number('area_sqft'), g.choice('construction', constructions)),
  dwellingRatingFlow_gpm: (g) => demand.dwellingRatingFlow_gpm(g.number('spacing_ft'), g.choice('table', ['newer', 'older'])),
  ratingDuration_h: (g) => demand.ratingDuration_s(g.number('flow_gpm')) / (s * 60),
  neededSupply_gal: (g) => demand.neededFlow({ ...building(g), occupancyClass: occupancy(g), construction: g.choice('construction', constructions), isDwelling: true, exposureCount: 0 }).supply_gal,
}

/** The case files of these laws, in the order of the accuracy table. */
export const lawFiles = [
  'atmosphere.json', 'vapor-pressure.json', 'hard-suction.json', 'dry-hydrant.json', 'submergence.json', 'draft-lift.json',
  'pump-curve.json', 'hose-friction.json', 'shuttle-hand-figures.json', 'openings.json', 'sources.json', 'needed-flow.json',
] as const
