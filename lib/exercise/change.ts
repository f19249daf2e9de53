import { z } from 'zod'
import { editBodySchema, legSchema, noLegSchema } from '../plan'

const id = z.string().min(1).max(64)
const share = z.number().min(0).max(1)

/**
 * What an inject or a decision does, as data. `plan` changes documents, with the ways that the changed plan
 * drives; everything else says what is so from then on, or what happens at that moment.
 */
export const changeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('plan'),
    edits: z.array(z.strictObject({ doc: z.enum(['plan', 'district']), body: editBodySchema })).min(1).max(100),
    legs: z.array(z.union([legSchema, noLegSchema])).max(5000).optional().describe('ways that the changed plan drives and the one before did not'),
  }),
  z.strictObject({ kind: z.literal('tenderOut'), tenderId: id }),
  z.strictObject({ kind: z.literal('unitLate'), unitId: id, delay_s: z.number().min(0).max(86_400) }),
  z.strictObject({ kind: z.literal('fillRate'), fillSiteId: id, rateShare: share.describe('of what the site gives otherwise: 0 when its pump has stopped or its prime is lost, 1 when all is well again') }),
  z.strictObject({ kind: z.literal('sourceLow'), fillSiteId: id, leftShare: share.describe('of the water still in the source, where it is known') }),
  z.strictObject({ kind: z.literal('tankLeak'), dumpSiteId: id, leak_gpm: z.number().min(0).max(20_000).describe('0 when it is mended') }),
  z.strictObject({ kind: z.literal('tankTips'), dumpSiteId: id, lostShare: share }),
  z.strictObject({ kind: z.literal('layRate'), layId: id, rateShare: share.describe('0 while a burst length is changed') }),
  z.strictObject({ kind: z.literal('moreDemand'), add_gpm: z.number().min(-20_000).max(20_000) }),
  z.strictObject({ kind: z.literal('demand'), flow_gpm: z.number().min(0).max(20_000).describe('asked for from then on, in place of everything planned') }),
  z.strictObject({ kind: z.literal('sendTender'), tenderId: id, fillSiteId: id.optional(), dumpSiteId: id.optional() }),
])
export type Change = z.infer<typeof changeSchema>
export type ChangeKind = Change['kind']

/** Something that came about in an exercise, at one moment of its clock. */
export const factSchema = z.strictObject({
  id: z.string().min(1).max(64),
  at_s: z.number().min(0).max(172_800).describe('after dispatch'),
  cause: z.enum(['inject', 'decision']),
  by: z.string().max(120).describe('person or role'),
  injectId: id.optional(),
  change: changeSchema,
})
export type Fact = z.infer<typeof factSchema>

/** When an inject comes: at a time, when a portable tank falls below a part of what it holds, after something has happened, or by hand. */
export const triggerSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('time'), at_s: z.number().min(0).max(172_800) }),
  z.strictObject({ kind: z.literal('level'), dumpSiteId: id, belowShare: share, from_s: z.number().min(0).max(172_800).optional().describe('not before; absent: once supply is ready there') }),
  z.strictObject({ kind: z.literal('after'), event: z.enum(['first-water', 'all-supply-ready', 'draft-lost', 'engine-empty']), delay_s: z.number().min(0).max(86_400) }),
  z.strictObject({ kind: z.literal('hand') }),
])
export type Trigger = z.infer<typeof triggerSchema>

export const injectSchema = z.strictObject({
  id,
  title: z.string().trim().min(1).max(120),
  told: z.string().max(1000).optional().describe('what the crews are told, in the words of the radio'),
  trigger: triggerSchema,
  change: changeSchema,
})
export type Inject = z.infer<typeof injectSchema>
