import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'

/** How a published figure is known: read in the source, read of it elsewhere, remembered, or worked by hand from a stated formula. */
const marks = ['seen', 'seen-2nd', 'memory', 'calc'] as const

const caseSchema = z.strictObject({
  law: z.string(),
  name: z.string(),
  source: z.string(),
  mark: z.enum(marks),
  given: z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.array(z.number())])),
  expected: z.number(),
  unit: z.string(),
  /** Agreement is within the larger of the two. */
  tolerance: z.strictObject({ abs: z.number().optional(), share: z.number().optional() }),
  why: z.string(),
  /** Why ours differs on purpose: the case must then lie outside the tolerance. */
  miss: z.string().optional(),
})
const fileSchema = z.strictObject({ title: z.string(), cases: z.array(caseSchema).min(1) })

export type ReferenceCase = z.infer<typeof caseSchema>

/** Cases of a file beside this one. */
export function readCases(file: string): z.infer<typeof fileSchema> {
  return fileSchema.parse(JSON.parse(readFileSync(fileURLToPath(new URL(file, import.meta.url)), 'utf8')))
}

/** What a case gives, each read with its kind. */
export class Given {
  constructor(private readonly of: ReferenceCase) {}

  number(key: string, otherwise?: number): number {
    const value = this.of.given[key] ?? otherwise
    if (typeof value !== 'number') throw new Error(`${this.of.name}: ${key} is ${String(value)}, must be a number`)
    return value
  }

  numbers(key: string): number[] {
    const value = this.of.given[key]
    if (!Array.isArray(value)) throw new Error(`${this.of.name}: ${key} must be a list of numbers`)
    return value
  }

  isTrue(key: string): boolean {
    return this.of.given[key] === true
  }

  choice<const T extends string>(key: string, choices: readonly T[]): T {
    const value = choices.find((choice) => choice === this.of.given[key])
    if (value === undefined) throw new Error(`${this.of.name}: ${key} must be one of ${choices.join(', ')}`)
    return value
  }
}

/** Whether a figure of ours lies within a case's tolerance. */
export function isWithin({ expected, tolerance }: ReferenceCase, ours: number): boolean {
  const allowed = Math.max(tolerance.abs ?? 0, (tolerance.share ?? 0) * Math.abs(expected))
  return Math.abs(ours - expected) <= allowed + 1e-9
}
