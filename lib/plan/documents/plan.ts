import { z } from 'zod'
import { intakePlaces, strainerKinds } from './apparatus'
import {
  countField, evidenceMap, flowField, hoseLengthField, hoseSizeField, idOf, itemFields, nameField, notesField, pointField, pressureField, quantity, shareField, timeField, volumeField,
} from './fields'

/** Id under which the fire ground stands beside the sites of a plan. */
export const FIRE_GROUND = 'fireGround'

/** Levels a plan may count on: the usual season's, a dry season's, those of the drought it is planned for. */
export const seasons = ['usual', 'dry', 'drought'] as const

/** Suction set-up of a pumper at a draft site. */
export const suctionSchema = z.strictObject({
  size_in: hoseSizeField,
  length_ft: quantity(0, 300),
  lineCount: countField(1, 4).optional(),
  strainer: z.enum(strainerKinds).optional(),
  intake: z.enum(intakePlaces).optional(),
})

/** Hose from one place to the next, all lines alike. */
const hoseLaySchema = z.strictObject({
  size_in: hoseSizeField,
  length_ft: hoseLengthField,
  lineCount: countField(1, 6).optional(),
})

const bayOrders = ['together', 'oneAtATime'] as const

/** Fill site: a pumper takes water from a source and fills tenders in one or more bays. */
const fillSiteSchema = z.strictObject({
  ...itemFields('fillSite'),
  point: pointField,
  sourceId: idOf('source').optional(),
  draftSiteId: idOf('draftSite').optional(),
  pumperId: idOf('apparatus').optional(),
  lift_ft: quantity(-20, 200).optional().describe('overrides the draft site’s'),
  suction: suctionSchema.optional(),
  fillLine: hoseLaySchema.optional().describe('from the pumper to one bay'),
  fillLineRise_ft: quantity(-300, 300).optional().describe('tender inlet above the pumper'),
  bayCount: countField(1, 12).optional(),
  bayOrder: z.enum(bayOrders).optional().describe('together: hooked-up tenders share the pump; oneAtATime: one fills, the next stands hooked up; default together'),
  discharge_psi: pressureField.optional().describe('highest pressure the fill lines are pumped at'),
  rate_gpm: flowField.optional().describe('fill rate into one tender alone, when it has been measured here'),
  setUp_s: timeField.optional().describe('from the pumper’s arrival to ready to fill'),
})

const dumpManners = ['backIn', 'driveThrough'] as const
const tankLinks = ['drains', 'jetSiphon'] as const

/** Dump site: tenders give their water to portable tanks, a pumper drafts from them and sends it on. */
const dumpSiteSchema = z.strictObject({
  ...itemFields('dumpSite'),
  point: pointField,
  portableTankIds: z.array(idOf('equipment')).max(12).optional(),
  tankCapacity_gal: volumeField.optional().describe('used when no portable tank is named'),
  tankHeight_in: quantity(6, 72).optional(),
  tankSlope_in: quantity(0, 60).optional().describe('fall of the ground across the tank'),
  tankLink: z.enum(tankLinks).optional().describe('drains: the tanks stand at one level; jetSiphon: tenders dump into all but the first tank, the pumper drafts from the first; default drains'),
  jetSiphonCount: countField(1, 12).optional().describe('default one for each tank but the first'),
  transfer_gpm: flowField.optional().describe('what the jet siphons move together, when it has been measured'),
  leak_gpm: flowField.optional().describe('runs out of the tank that is drafted from'),
  nurseId: idOf('apparatus').optional().describe('tender that stands here full in place of portable tanks and takes the loads'),
  intake_gpm: flowField.optional().describe('most the nurse tender takes from all that unload into it'),
  outlet_gpm: flowField.optional().describe('most the nurse tender gives to the pumper'),
  pumperId: idOf('apparatus').optional(),
  supplyLine: hoseLaySchema.optional().describe('from the pumper to the fire ground; absent: its friction is not counted'),
  supplyLineRise_ft: quantity(-300, 300).optional().describe('fire ground above the pumper'),
  positionCount: countField(1, 12).optional().describe('tenders that can dump at once'),
  manner: z.enum(dumpManners).optional(),
  setUp_s: timeField.optional().describe('from the first arrival with the tank to tank set'),
  pumpSetUp_s: timeField.optional().describe('from the pumper’s arrival to drafting with the line to the attack charged'),
  reprime_s: timeField.optional().describe('to get a lost draft back'),
  draftLimit_in: quantity(0, 60).optional().describe('water over the tank floor at which the draft is lost, at the planned flow'),
  demandShare: shareField.optional(),
})

/** A tender's part in the plan. */
const tenderTaskSchema = z.strictObject({
  id: idOf('tenderTask'),
  tenderId: idOf('apparatus'),
  fillSiteId: idOf('fillSite').optional(),
  dumpSiteId: idOf('dumpSite').optional(),
  choosesFill: z.boolean().optional().describe('goes to whichever fill site gets it back first'),
  choosesDump: z.boolean().optional().describe('goes to whichever dump site gets it back first'),
  delay_s: timeField.optional().describe('later than its station could send it, after dispatch'),
  withdraw_s: timeField.optional().describe('leaves the shuttle at its next dump after this time'),
})

/** What an officer knows of one way: a measured time, a distance, or the road to force. */
const legNoteSchema = z.strictObject({
  id: idOf('legNote'),
  fromId: z.string().max(64),
  toId: z.string().max(64),
  apparatusId: idOf('apparatus').optional().describe('absent: any vehicle'),
  travel_s: timeField.optional(),
  distance_mi: quantity(0, 200).optional(),
  average_mph: quantity(3, 75).optional(),
  via: z.array(pointField).max(20).optional(),
  evidence: evidenceMap.optional(),
})

/** A stretch between a fill and a dump site that one vehicle at a time can drive, but those of one direction behind each other. */
const oneLaneSchema = z.strictObject({
  ...itemFields('oneLane'),
  fillSiteId: idOf('fillSite'),
  dumpSiteId: idOf('dumpSite'),
  pass_s: timeField.optional().describe('to drive through all of it, default 60'),
  alongShare: shareField.optional().describe('where its middle lies on the way from the fill to the dump site, default half'),
  passingPlaceCount: countField(0, 20).optional().describe('places within it where vehicles can pass, evenly spread'),
})

const layModes = ['closed', 'open'] as const
const layApplianceKinds = ['fitting', 'master-stream'] as const

/** A stretch of a hose lay, all its lines alike, in the order in which they lie from the source. */
const layStretchSchema = z.strictObject({
  id: idOf('layStretch'),
  size_in: hoseSizeField.min(0.75),
  lineCount: countField(1, 4).optional(),
  length_ft: hoseLengthField.min(1).optional().describe('along the lay; absent: what the others leave of the way'),
  coefficient: z.number().min(0.001).max(5000).optional().describe('C of FL = C (Q/100)² L/100; that of the stock, else of the catalogue, when absent'),
  isByHand: z.boolean().optional().describe('carried and coupled by hand; absent: laid from a bed'),
  evidence: evidenceMap.optional(),
})

const layApplianceSchema = z.strictObject({
  id: idOf('layAppliance'),
  kind: z.enum(layApplianceKinds),
  at_ft: hoseLengthField.describe('of hose from the source pumper'),
})

const crossingProtections = ['bridge', 'ramp', 'closed'] as const

/** Where a hose lay crosses a road, and what keeps wheels off the hose. */
const layCrossingSchema = z.strictObject({
  id: idOf('layCrossing'),
  at_ft: hoseLengthField.describe('along the way from the source'),
  road: z.string().max(120).optional(),
  protection: z.enum(crossingProtections).optional().describe('bridge: the hose over the road; ramp: wheels over the hose; closed: nobody drives there; default bridge'),
})

/** Hose lay: from a source, by pumpers in relay where one is not enough, to where its water is used. */
const laySchema = z.strictObject({
  ...itemFields('lay'),
  points: z.array(pointField).min(2).max(400).describe('its way over the ground, both ends included'),
  fromId: z.string().max(64).describe('source or draft site'),
  toId: z.string().max(64).describe('fill site, dump site or the fire ground'),
  pumperIds: z.array(idOf('apparatus')).max(13).describe('at hand; the first stands at the source'),
  stretches: z.array(layStretchSchema).min(1).max(20),
  appliances: z.array(layApplianceSchema).max(40).optional(),
  crossings: z.array(layCrossingSchema).max(40).optional().describe('of roads'),
  mode: z.enum(layModes).optional().describe('closed: hose from pump to pump; open: each pumper drafts from a portable tank; default closed'),
  standsOnRoads: z.boolean().optional().describe('pumpers stand only beside roads that all of them can reach; before standsAtPoints'),
  standsAtPoints: z.boolean().optional().describe('pumpers stand only at the points of the way; absent: anywhere along it'),
  wanted_gpm: flowField.min(1).optional().describe('absent: the most it carries'),
  isLeftOut: z.boolean().optional().describe('stands beside the plan: its flow is not counted'),
  start_s: timeField.optional().describe('laying begins, after dispatch; default when all its pumpers are there'),
  rise_ft: quantity(-3000, 3000).optional().describe('far end above the source pumper'),
  lift_ft: quantity(-20, 200).optional().describe('overrides the draft site’s'),
  suction: suctionSchema.optional(),
  residual_psi: quantity(0, 100).optional().describe('left at each intake, default 20'),
  outlet_psi: quantity(0, 300).optional().describe('left at the far end, default 20'),
  crewCount: countField(0, 100).optional().describe('people who lay hose, beside one operator a pumper'),
  bedCount: countField(1, 12).optional().describe('vehicles that lay at the same time'),
})

const demandStageSchema = z.strictObject({
  id: idOf('demandStage'),
  from_s: timeField.describe('after dispatch'),
  flow_gpm: flowField,
})

/** What the officer holds the plan to: a flow, by when, for how long. */
export const criterionSchema = z.strictObject({
  flow_gpm: flowField.min(1),
  by_s: timeField.describe('after dispatch'),
  for_s: timeField.min(60).describe('without a break'),
})

export const planSchema = z.strictObject({
  format: z.literal('millrace-plan-document').optional(),
  version: z.literal(1).optional(),
  id: idOf('plan'),
  name: nameField,
  notes: notesField.optional(),
  evidence: evidenceMap.optional(),
  districtId: idOf('district'),
  hazardId: idOf('hazard').optional(),
  fireGround: pointField.optional(),
  firstDueId: idOf('apparatus').optional().describe('the engine that arrives first; its tank holds the fire until supply is ready'),
  firstLine_s: timeField.optional().describe('from its arrival to water on the fire'),
  demand: z.array(demandStageSchema).max(50).optional().describe('absent: the hazard’s needed flow from the first arrival'),
  duration_s: timeField.optional().describe('how long supply must last once it is ready, default 2 h'),
  restAfter_s: timeField.optional().describe('drivers take a break after this time; default none under 4 h of supply, else 4 h'),
  rest_s: timeField.optional().describe('length of that break, default 15 min'),
  reserve_s: timeField.optional().describe('time of flow the tanks keep in hand, default 2 min'),
  season: z.enum(seasons).optional().describe('levels of the sources it counts on: lift grows and usable water shrinks by the fall of the surface; default dry where the fall is known'),
  criterion: criterionSchema.optional(),
  fillSites: z.array(fillSiteSchema).max(40),
  dumpSites: z.array(dumpSiteSchema).max(40),
  tenders: z.array(tenderTaskSchema).max(200),
  oneLanes: z.array(oneLaneSchema).max(40).optional(),
  hoseLays: z.array(laySchema).max(20).optional(),
  legNotes: z.array(legNoteSchema).max(1000),
})

export type Season = (typeof seasons)[number]
export type Suction = z.infer<typeof suctionSchema>
export type FillSite = z.infer<typeof fillSiteSchema>
export type DumpSite = z.infer<typeof dumpSiteSchema>
export type TenderTask = z.infer<typeof tenderTaskSchema>
export type OneLane = z.infer<typeof oneLaneSchema>
export type LegNote = z.infer<typeof legNoteSchema>
export type Lay = z.infer<typeof laySchema>
export type LayStretch = z.infer<typeof layStretchSchema>
export type DemandStage = z.infer<typeof demandStageSchema>
export type Criterion = z.infer<typeof criterionSchema>
export type Plan = z.infer<typeof planSchema>
