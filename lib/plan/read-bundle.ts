import { issue, type Issue } from '../issue'
import { bundleSchema, type Bundle } from './documents/bundle'
import { issuesFromZod } from './issues-from-zod'

/** The version this code writes; older ones are lifted step by step, newer ones refused. */
const BUNDLE_VERSION = 1

/**
 * Reads a bundle from parsed JSON, at the door.
 *
 * @param json anything at all
 * @returns the bundle, or the issues that say what and where; never half of each
 */
export function readBundle(json: unknown): Bundle | Issue[] {
  if (json === null || typeof json !== 'object' || Array.isArray(json)) return [issue('bundle-not-an-object', 'block')]
  const { format, version } = json as { format?: unknown; version?: unknown }
  if (format !== 'millrace-plan') return [issue('bundle-other-format', 'block', [], { format: String(format ?? '').slice(0, 40) })]
  if (typeof version === 'number' && version > BUNDLE_VERSION)
    return [issue('bundle-newer', 'block', [], { version, known: BUNDLE_VERSION })]
  const parsed = bundleSchema.safeParse(json)
  if (!parsed.success) return issuesFromZod(parsed.error, '', json)
  const doubled = doubledIds(parsed.data)
  return doubled.length > 0 ? doubled : parsed.data
}

/** Whether a bundle was read, rather than the issues why not. */
export const isBundle = (read: Bundle | Issue[]): read is Bundle => !Array.isArray(read)

/** Ids name one thing each: across a document two items never share one. */
function doubledIds({ district, plan }: Bundle): Issue[] {
  const seen = new Map<string, string>()
  const issues: Issue[] = []
  for (const [where, doc] of [['district', district], ['plan', plan]] as const) {
    for (const [field, list] of Object.entries(doc)) {
      if (!Array.isArray(list)) continue
      list.forEach((item: { id?: string }, index) => {
        if (!item.id) return
        const path = `${where}.${field}[${index}]`
        const first = seen.get(item.id)
        if (first) issues.push(issue('id-doubled', 'block', [item.id], { path, first }))
        else seen.set(item.id, path)
      })
    }
  }
  return issues
}
