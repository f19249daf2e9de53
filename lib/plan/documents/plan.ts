import { z } from 'zod'
import { countField, evidenceMap, flowField, idOf, itemFields, nameField, notesField, pointField, quantity, shareField, timeField } from './fields'
import { laySchema } from './lay'
import { dumpSiteSchema, fillSiteSchema } from './plan-sites'
import { seasons } from './seasons'

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

export type TenderTask = z.infer<typeof tenderTaskSchema>
export type OneLane = z.infer<typeof oneLaneSchema>
export type LegNote = z.infer<typeof legNoteSchema>
export type DemandStage = z.infer<typeof demandStageSchema>
export type Criterion = z.infer<typeof criterionSchema>
export type Plan = z.infer<typeof planSchema>
