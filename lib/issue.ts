/**
 * Bad news from the documents or from physics, as data. Its words and units are
 * rendered outside `lib/`, from message files, by `code`.
 *
 * `block`: no answer stands on this. `warn`: the answer stands, a person must look.
 * `note`: worth knowing.
 */
export type Severity = 'block' | 'warn' | 'note'

export type Issue = {
  code: string
  severity: Severity
  /** Ids of the items it is about, most important first. */
  subjectIds: string[]
  /** Numbers keyed by unit-suffixed names, and plain words, for the sentence. */
  values: Record<string, number | string>
}

/**
 * An issue: bad news as data.
 *
 * @param subjectIds items that it is about
 * @param values by name with the unit at the end, for its sentence
 */
export function issue(code: string, severity: Severity, subjectIds: readonly string[] = [], values: Record<string, number | string> = {}): Issue {
  return { code, severity, subjectIds: [...subjectIds], values }
}

/** Whether one of them stands in the way of an answer. */
export const isBlocking = (issues: readonly Issue[]): boolean => issues.some(({ severity }) => severity === 'block')

/** Throws the RangeError of a broken contract: names argument, value and rule. */
export function requireThat(holds: boolean, argument: string, value: unknown, rule: string): asserts holds {
  if (!holds) throw new RangeError(`${argument} is ${String(value)}, must be ${rule}`)
}

/** Finite and 0 or more. */
export function requireNotNegative(argument: string, value: number): void {
  requireThat(Number.isFinite(value) && value >= 0, argument, value, 'a number of 0 or more')
}

/** Finite and above 0. */
export function requirePositive(argument: string, value: number): void {
  requireThat(Number.isFinite(value) && value > 0, argument, value, 'a number above 0')
}
