import { z } from 'zod'
import { bundleSchema } from '../plan'
import { factSchema, injectSchema } from './change'

/** Who sits at a screen. What each sees is what that place would know. */
export const roles = ['facilitator', 'waterSupply', 'attack', 'dumpSite', 'fillSite'] as const
export type Role = (typeof roles)[number]

/** A note that somebody took down while it ran. */
export const noteSchema = z.strictObject({
  id: z.string().min(1).max(64),
  at_s: z.number().min(0).max(172_800),
  by: z.string().max(120),
  role: z.enum(roles),
  text: z.string().trim().min(1).max(2000),
})

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
  facts: z.array(factSchema).max(2000).describe('in the order in which they came about'),
  notes: z.array(noteSchema).max(2000),
  endedAt_s: z.number().min(0).max(172_800).optional().describe('clock at which it was ended'),
})
export type Exercise = z.infer<typeof exerciseSchema>
export type ExerciseNote = z.infer<typeof noteSchema>
