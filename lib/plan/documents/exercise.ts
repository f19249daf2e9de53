import { z } from 'zod'
import { editBodySchema } from '../edits/edit'
import { bundleSchema, layHeightsSchema, legSchema, noLegSchema } from './bundle'
import { nameField, pointField, quantity, timeField } from './fields'

const id = z.string().min(1).max(64)
const share = z.number().min(0).max(1)

/** The way that a vehicle takes between two places while the road it takes otherwise is closed. */
const detourSchema = z.strictObject({
  apparatusId: id,
  fromId: z.string().max(64),
  toId: z.string().max(64),
  distance_mi: quantity(0, 1000),
  travel_s: timeField,
  path: z.array(pointField).min(2).max(20_000),
})
export type Detour = z.infer<typeof detourSchema>
const detours = z.array(detourSchema).max(2000)

/** Why a fill site gives less than it should. */
const fillFaults = ['pump', 'primer', 'strainer', 'hose'] as const

/**
 * What an inject or a decision does, as data. `plan` changes documents, with the ways that the changed plan
 * drives; everything else says what is so from then on, or what happens at that moment.
 */
export const changeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('plan'),
    edits: z.array(z.strictObject({ doc: z.enum(['plan', 'district']), body: editBodySchema })).min(1).max(100),
    legs: z.array(z.union([legSchema, noLegSchema])).max(5000).optional().describe('ways that the changed plan drives and the one before did not'),
    heights: z.array(layHeightsSchema).max(20).optional().describe('ground under hose lays that the plan before did not have'),
    detours: detours.optional().describe('those ways round the roads that are closed'),
  }),
  z.strictObject({ kind: z.literal('tenderOut'), tenderId: id }),
  z.strictObject({ kind: z.literal('unitLate'), unitId: id, delay_s: z.number().min(0).max(86_400) }),
  z.strictObject({ kind: z.literal('fillRate'), fillSiteId: id, rateShare: share.describe('of what the site gives otherwise: 0 when its pump has stopped or its prime is lost, 1 when all is well again'), fault: z.enum(fillFaults).optional() }),
  z.strictObject({ kind: z.literal('sourceLow'), fillSiteId: id, leftShare: share.describe('of the water still in the source, where it is known') }),
  z.strictObject({ kind: z.literal('tankLeak'), dumpSiteId: id, leak_gpm: z.number().min(0).max(20_000).describe('0 when it is mended') }),
  z.strictObject({ kind: z.literal('tankTips'), dumpSiteId: id, lostShare: share }),
  z.strictObject({ kind: z.literal('layRate'), layId: id, rateShare: share.describe('0 while a burst length is changed') }),
  z.strictObject({ kind: z.literal('moreDemand'), add_gpm: z.number().min(-20_000).max(20_000) }),
  z.strictObject({ kind: z.literal('demand'), flow_gpm: z.number().min(0).max(20_000).describe('asked for from then on, in place of everything planned') }),
  z.strictObject({
    kind: z.literal('roadClosed'),
    roadId: id,
    name: nameField.optional(),
    point: pointField.describe('where nobody gets through'),
    detours: detours.describe('ways round, as far as there are any; who has none stops'),
  }),
  z.strictObject({ kind: z.literal('roadOpened'), roadId: id }),
  z.strictObject({ kind: z.literal('sendTender'), tenderId: id, fillSiteId: id.optional(), dumpSiteId: id.optional() }),
])
export type Change = z.infer<typeof changeSchema>

/** Something that came about in an exercise, at one moment of its clock. */
const factSchema = z.strictObject({
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

const injectSchema = z.strictObject({
  id,
  title: z.string().trim().min(1).max(120),
  told: z.string().max(1000).optional().describe('what the crews are told, in the words of the radio'),
  trigger: triggerSchema,
  change: changeSchema,
})
export type Inject = z.infer<typeof injectSchema>

/** Who sits at a screen. What each sees is what that place would know. */
export const roles = ['facilitator', 'waterSupply', 'attack', 'dumpSite', 'fillSite'] as const
export type Role = (typeof roles)[number]

/** A note that somebody took down while it ran. */
const noteSchema = z.strictObject({
  id: z.string().min(1).max(64),
  at_s: z.number().min(0).max(172_800),
  by: z.string().max(120),
  role: z.enum(roles),
  text: z.string().trim().min(1).max(2000),
})

export const clockSpeeds = [1, 2, 5, 10, 20, 60] as const

/** The exercise's clock as it was last set; while it runs, it is that much further as time has passed since, times its speed. */
const clockSchema = z.strictObject({
  at_s: z.number().min(0).max(172_800),
  isRunning: z.boolean(),
  speedFactor: z.number().min(1).max(60),
  setAt: z.string().max(40).describe('when it was set, by the station’s time'),
})
export type ExerciseClock = z.infer<typeof clockSchema>

/**
 * An exercise: a plan as it stood when the exercise was made, what is to come over it, and what came about. The plan
 * lives on without it; nothing here follows it.
 */
export const exerciseSchema = z.strictObject({
  format: z.literal('millrace-exercise'),
  version: z.literal(1),
  id: z.string().min(1).max(64),
  name: z.string().trim().min(1).max(120),
  districtId: z.string().min(1).max(64).describe('district it belongs to in lists; what it is played on is in its own bundle'),
  bundle: bundleSchema,
  injects: z.array(injectSchema).max(100),
  clock: clockSchema.optional().describe('absent: not begun'),
  facts: z.array(factSchema).max(2000).describe('in the order in which they came about'),
  notes: z.array(noteSchema).max(2000),
  endedAt_s: z.number().min(0).max(172_800).optional().describe('clock at which it was ended'),
})
export type Exercise = z.infer<typeof exerciseSchema>
export type ExerciseNote = z.infer<typeof noteSchema>
