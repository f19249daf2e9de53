import { z } from 'zod'
import type { Point } from '../../geo'
import { districtSchema } from './district'
import { pointField, quantity, timeField } from './fields'
import { planSchema } from './plan'

/** How a leg is known, best first. */
export const legSources = ['measured', 'routed', 'handbook'] as const

/** A way that was found, kept under the key of what was asked. */
export const legSchema = z.strictObject({
  key: z.string().max(400),
  by: z.enum(legSources),
  distance_mi: quantity(0, 1000),
  travel_s: timeField,
  path: z.array(pointField).max(20_000),
  roads: z.array(z.string().max(120)).max(400).optional().describe('names of the roads in order'),
  cautions: z
    .array(z.strictObject({ code: z.string().max(60), severity: z.enum(['warn', 'note']), values: z.record(z.string(), z.union([z.number(), z.string()])) }))
    .max(200)
    .optional(),
})

/** What was asked and has no way, with the reason: never answered by a straight line instead. */
export const noLegSchema = z.strictObject({
  key: z.string().max(400),
  by: z.literal('none'),
  code: z.string().max(60),
  values: z.record(z.string(), z.union([z.number(), z.string()])),
})

/** Ground under the way of a hose lay, read from the district's elevation and kept under the key of what was asked. */
export const layHeightsSchema = z.strictObject({
  key: z.string().max(100),
  points: z.array(z.strictObject({ distance_ft: quantity(0, 1_000_000), height_ft: quantity(-2000, 30_000).optional(), doubt_ft: quantity(0, 1000).optional() })).max(20_500),
  stands_ft: z.array(quantity(0, 1_000_000)).max(5000).optional().describe('along the way: where a pumper can stand on a road it can reach; absent: not looked for'),
})

/**
 * All that an answer stands on, in one file: every id in it resolves, and it carries the
 * legs that were found, so it is evaluated without a road graph, a database or a network.
 */
export const bundleSchema = z.strictObject({
  format: z.literal('millrace-plan'),
  version: z.literal(1),
  district: districtSchema,
  plan: planSchema,
  legs: z.array(z.union([legSchema, noLegSchema])).max(5000),
  layHeights: z.array(layHeightsSchema).max(20).optional(),
})

/** What a leg is asked for: two places and the vehicle as it is on that way. */
export type LegAsk = { from: Point; to: Point; via: Point[]; gross_lb?: number; height_ft?: number; width_ft?: number }
export type Leg = z.infer<typeof legSchema>
export type NoLeg = z.infer<typeof noLegSchema>
export type GroundHeights = z.infer<typeof layHeightsSchema>
export type Bundle = z.infer<typeof bundleSchema>
