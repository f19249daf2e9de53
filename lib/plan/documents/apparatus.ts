import { z } from 'zod'
import { countField, dayField, flowField, hoseLengthField, hoseSizeField, idOf, itemFields, pressureField, quantity, shareField, timeField, volumeField, weightField } from './fields'

export const strainerKinds = ['barrel', 'floating', 'low-level'] as const

/** Fields of any vehicle. */
const vehicleFields = {
  ...itemFields('apparatus'),
  stationId: idOf('station').optional(),
  mutualAid: z.boolean().optional(),
  turnout_s: timeField.optional().describe('dispatch to wheels rolling; the station gives it when absent'),
  tank_gal: volumeField.optional().describe('nominal tank'),
  full_lb: weightField.optional().describe('gross weight, tank full and crew aboard'),
  empty_lb: weightField.optional().describe('weight with the tank empty'),
  height_ft: quantity(0, 20).optional(),
  width_ft: quantity(0, 15).optional(),
  crewCount: countField(0, 12).optional(),
}

/** One point of a pumper's own test at draft: the most it took, suction being the limit and not the engine. */
const testPointSchema = z.strictObject({
  lift_ft: quantity(0, 40),
  flow_gpm: flowField,
  suction_in: hoseSizeField,
  suction_ft: quantity(0, 300).optional().describe('default 20'),
  suctionLineCount: countField(1, 4).optional(),
  altitude_ft: quantity(-1500, 18_000).optional(),
  water_degF: quantity(28, 130).optional(),
  testedOn: dayField.optional(),
})

/** One point of a pumper's own pump test: the most it gave at a net pressure. */
const curvePointSchema = z.strictObject({ netPressure_psi: pressureField, flow_gpm: flowField, testedOn: dayField.optional() })

const dumpWays = ['gravity', 'jet', 'pump'] as const

export const intakePlaces = ['side', 'front', 'rear'] as const

const pumpFields = {
  rated_gpm: flowField.optional().describe('rated capacity at draft, 150 psi net'),
  ratedLift_ft: quantity(0, 15).optional(),
  testPoints: z.array(testPointSchema).max(40).optional(),
  curvePoints: z.array(curvePointSchema).max(40).optional(),
  dryVacuum_inHg: quantity(0, 30).optional().describe('highest vacuum held in the dry-vacuum test'),
  dryVacuumAltitude_ft: quantity(-1500, 18_000).optional(),
  isOverRated: z.boolean().optional().describe('count on 110 % of rating below 150 psi; assumed unless tested'),
  intakeLoss_ft: quantity(0, 60).optional().describe('extra loss of its front or rear intake at 1,000 gpm'),
  pumpTop_ft: quantity(0, 10).optional().describe('highest place priming must fill, above the intake centre line'),
  priming_s: timeField.optional().describe('time to prime in the last test'),
  primer_gpm: flowField.optional().describe('air the primer moves at atmospheric intake, gallons a minute'),
}

/** Pumper: an engine that can draft and pump on. */
const pumperSchema = z.strictObject({
  kind: z.literal('pumper'),
  ...vehicleFields,
  ...pumpFields,
  discharge_psi: pressureField.optional().describe('highest discharge pressure it is run at'),
  tankToPump_gpm: flowField.optional().describe('tested flow from tank to pump'),
  tankToPumpDrop_ft: quantity(0.1, 60).optional().describe('head lost at that flow'),
  tankFill_in: hoseSizeField.optional().describe('tank fill line'),
  tankFill_gpm: flowField.optional().describe('flow of the tank fill line at 150 psi, valve wide open'),
  tankHeight_ft: quantity(0, 12).optional().describe('water in a full tank above the pump eye'),
  supplyHose_in: hoseSizeField.optional(),
  supplyHose_ft: hoseLengthField.optional(),
  fuel_s: timeField.optional().describe('how long it pumps on a full tank of fuel'),
  suction_in: hoseSizeField.optional().describe('hard suction carried'),
  suction_ft: quantity(0, 300).optional(),
})

/** Tender: mobile water supply apparatus. */
const tenderSchema = z.strictObject({
  kind: z.literal('tender'),
  ...vehicleFields,
  usableShare: shareField.optional().describe('part of the tank that is carried and given each trip, default 0.9'),
  dump_gpm: flowField.optional().describe('average over the first 90 % of the load'),
  dumpTail_gpm: flowField.optional().describe('rate over the last tenth'),
  dumpRear_gpm: flowField.optional().describe('average by its rear valve, where that differs'),
  dumpSide_gpm: flowField.optional().describe('average by a side valve, where that differs'),
  dumpBy: z.enum(dumpWays).optional().describe('default gravity'),
  dumpOpening_in: hoseSizeField.optional().describe('dump valve; with the head over it the rate falls as the tank empties'),
  dumpHead_ft: quantity(0.5, 12).optional().describe('water over the middle of the opening, tank full'),
  dumpCap_gpm: quantity(50, 20_000).optional().describe('most that vents and baffles let through'),
  fillLimit_gpm: flowField.optional().describe('most it takes, by its inlet and vent'),
  fillInlet_in: hoseSizeField.optional(),
  fillInletMaximum_psi: pressureField.optional(),
  fillInletCount: countField(1, 4).optional().describe('inlets that can be filled through at once, default 1'),
  topUpShare: shareField.optional().describe('part of the load that is filled slowly at the end'),
  topUpRateShare: quantity(0.01, 1).optional().describe('rate of that part, of the rate before'),
  dumpPosition_s: timeField.optional(),
  dumpClear_s: timeField.optional(),
  fillPosition_s: timeField.optional(),
  fillClear_s: timeField.optional(),
  pump_gpm: flowField.optional(),
})

/** Portable pump: carried to the water by hand or trailer. */
const portablePumpSchema = z.strictObject({
  kind: z.literal('portablePump'),
  ...vehicleFields,
  ...pumpFields,
  discharge_psi: pressureField.optional(),
})

export const apparatusSchema = z.discriminatedUnion('kind', [pumperSchema, tenderSchema, portablePumpSchema])

export type TestPoint = z.infer<typeof testPointSchema>
export type Pumper = z.infer<typeof pumperSchema>
export type Tender = z.infer<typeof tenderSchema>
export type PortablePump = z.infer<typeof portablePumpSchema>
export type Apparatus = z.infer<typeof apparatusSchema>
/** Whatever can stand at the water and draft. */
export type DraftingPump = Pumper | PortablePump
