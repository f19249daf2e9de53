import { z } from 'zod'
import { intakePlaces, strainerKinds } from './apparatus'
import { countField, flowField, hoseLengthField, hoseSizeField, idOf, itemFields, pointField, pressureField, quantity, shareField, timeField, volumeField } from './fields'

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
export const fillSiteSchema = z.strictObject({
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
export const dumpSiteSchema = z.strictObject({
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

export type Suction = z.infer<typeof suctionSchema>
export type FillSite = z.infer<typeof fillSiteSchema>
export type DumpSite = z.infer<typeof dumpSiteSchema>
