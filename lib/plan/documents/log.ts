import { z } from 'zod'
import { bundleSchema } from './bundle'
import { dayField, flowField, nameField, notesField, pointField, volumeField } from './fields'
import { postKinds, siteEventKinds, siteEventValues } from './log-kinds'
import { criterionSchema } from './plan'

const id = z.string().min(1).max(64)

/** The time of an event or a log: milliseconds since 1970-01-01 UTC, from the year 2000 to 2100. */
const momentField = z.number().int().min(946_684_800_000).max(4_102_444_800_000)

const postSchema = z.strictObject({
  kind: z.enum(postKinds),
  siteId: id.optional().describe('fill or dump site of the plan as it is kept in the log, or one of the log’s own places; a draft post names the fill site'),
})

const entryWays = ['button', 'paper', 'import'] as const

/**
 * One thing seen at one post. Events are never changed and never taken away: a correction is another event that
 * `replaces`, an undo one that `retracts`, and of an undo
 * only that counts. A correction names the clock that its time is by, so it keeps the `device` of what it replaces.
 */
export const siteEventSchema = z
  .strictObject({
    id: z.uuid(),
    logId: id,
    device: z.string().min(1).max(64).describe('whose clock `at_ms` is: drawn at random by each device, and by each paper form'),
    by: z.string().trim().max(120).optional().describe('person or crew'),
    post: postSchema,
    kind: z.enum(siteEventKinds),
    apparatusId: id.optional(),
    value: z.number().optional().describe('[gal], [gpm] or [psi] by kind'),
    note: z.string().trim().min(1).max(2000).optional(),
    at_ms: momentField.describe('by that clock, UTC'),
    made_ms: momentField.optional().describe('when it was entered, by the clock of whoever entered it; absent: at_ms'),
    entered: z.enum(entryWays),
    replaces: z.uuid().optional().describe('event that this one stands in place of'),
    retracts: z.uuid().optional().describe('event that did not happen'),
  })
  .superRefine((event, context) => {
    const rule = siteEventValues[event.kind]
    const { value } = event
    if (value !== undefined && !rule) context.addIssue({ code: 'unrecognized_keys', keys: ['value'], path: [] })
    if (value !== undefined && rule && value < rule.low) context.addIssue({ code: 'too_small', origin: 'number', minimum: rule.low, path: ['value'] })
    if (value !== undefined && rule && value > rule.high) context.addIssue({ code: 'too_big', origin: 'number', maximum: rule.high, path: ['value'] })
    if (event.retracts !== undefined) {
      if (event.replaces !== undefined) context.addIssue({ code: 'unrecognized_keys', keys: ['replaces'], path: [] })
      return
    }
    if (value === undefined && rule?.isNeeded) context.addIssue({ code: 'invalid_type', expected: 'number', path: ['value'] })
    if (event.kind === 'note' && event.note === undefined) context.addIssue({ code: 'invalid_type', expected: 'string', path: ['note'] })
  })
export type SiteEvent = z.infer<typeof siteEventSchema>

/** A place of a log that no plan names. */
const logPlaceSchema = z.strictObject({ id, name: nameField, kind: z.enum(['fill', 'dump']), point: pointField.optional(), tank_gal: volumeField.optional().describe('portable tanks of a dump site, all together') })

/** An apparatus that came and that neither the plan nor the district has. */
const logUnitSchema = z.strictObject({ id, name: nameField, tank_gal: volumeField.optional() })

/**
 * Log of a drill or a fire. It holds what was known before; what happened is a set of events kept apart, which grows from
 * many devices and is never changed, so nothing of it stands here.
 */
export const logSchema = z.strictObject({
  format: z.literal('millrace-log'),
  version: z.literal(1),
  id: z.string().min(1).max(64),
  name: nameField,
  districtId: z.string().min(1).max(64),
  planId: id.optional().describe('plan it was made from, where that is still to be found'),
  planned: bundleSchema.optional().describe('the plan as it stood when the log was made; absent: logged without a plan'),
  date: dayField.describe('by the clock at the place'),
  zone: z.string().max(60).optional().describe('IANA time zone of the place; absent: that of whoever looks'),
  dispatched_ms: momentField.optional().describe('when dispatch sent them out, UTC'),
  ended_ms: momentField.optional().describe('when the supply was no longer needed, UTC'),
  needed_gpm: flowField.optional(),
  criterion: criterionSchema.optional(),
  notes: notesField.optional(),
  places: z.array(logPlaceSchema).max(40),
  units: z.array(logUnitSchema).max(60),
})
export type FieldLog = z.infer<typeof logSchema>
