import { issue, type Issue } from '../issue'

/** Carries the bad news of a file out of a reader; it never leaves `readPlaces`. */
export class ExchangeFault extends Error {
  constructor(readonly found: Issue) {
    super(found.code)
  }
}

/** A fault that stops the reading, for throwing. */
export const exchangeFault = (code: string, values: Record<string, number | string> = {}): ExchangeFault => new ExchangeFault(issue(code, 'block', [], values))
