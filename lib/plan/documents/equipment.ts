import { z } from 'zod'
import { strainerKinds } from './apparatus'
import { countField, hoseLengthField, hoseSizeField, idOf, itemFields, pressureField, quantity, volumeField } from './fields'

const storedAt = { ...itemFields('equipment'), carriedBy: idOf('apparatus').optional(), count: countField(0, 500).optional() }

const hoseSchema = z.strictObject({
  kind: z.literal('hose'),
  ...storedAt,
  size_in: hoseSizeField,
  length_ft: hoseLengthField.describe('all of it together'),
  coefficient: z.number().min(0.001).max(5000).optional().describe('C of FL = C (Q/100)² L/100; the catalogue gives it when absent'),
  working_psi: pressureField.optional(),
})

const portableTankSchema = z.strictObject({
  kind: z.literal('portableTank'),
  ...storedAt,
  capacity_gal: volumeField,
  height_in: quantity(6, 72).optional().describe('lip above the floor, default 29'),
})

const hardSuctionSchema = z.strictObject({
  kind: z.literal('hardSuction'),
  ...storedAt,
  size_in: hoseSizeField,
  section_ft: quantity(1, 40),
})

const strainerSchema = z.strictObject({ kind: z.literal('strainer'), ...storedAt, style: z.enum(strainerKinds), size_in: hoseSizeField.optional() })

const jetSiphonSchema = z.strictObject({ kind: z.literal('jetSiphon'), ...storedAt, size_in: hoseSizeField, drive_in: hoseSizeField.optional() })

export const equipmentSchema = z.discriminatedUnion('kind', [hoseSchema, portableTankSchema, hardSuctionSchema, strainerSchema, jetSiphonSchema])

export type Equipment = z.infer<typeof equipmentSchema>
