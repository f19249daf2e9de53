import { issue, type Issue } from '../issue'

/** Carries the bad news of a file out of a reader; it never leaves `readOsm`. */
export class OsmFault extends Error {
  constructor(readonly found: Issue) {
    super(found.code)
  }
}

/** A fault that stops the reading, for throwing. */
export const osmFault = (code: string, values: Record<string, number | string> = {}): OsmFault =>
  new OsmFault(issue(code, 'block', [], values))
