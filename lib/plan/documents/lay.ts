import { z } from 'zod'
import { countField, evidenceMap, flowField, hoseLengthField, hoseSizeField, idOf, itemFields, pointField, quantity, timeField } from './fields'
import { suctionSchema } from './plan-sites'

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
export const laySchema = z.strictObject({
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

export type Lay = z.infer<typeof laySchema>
export type LayStretch = z.infer<typeof layStretchSchema>
