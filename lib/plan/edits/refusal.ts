import { issue, type Issue } from '../../issue'
import { issuesFromZod } from '../issues-from-zod'
import type { z } from 'zod'

/** An edit that names a list or an item the document does not have. */
export const missing = (collection: string, id: string): Issue =>
  issue('edit-item-missing', 'block', [id], { collection })

/** An edit of a list that the document does not have. */
export const noSuchList = (collection: string): Issue => issue('edit-list-missing', 'block', [], { collection })

/** An edit whose values the document cannot hold. */
export function invalid(error: z.ZodError, path: string, subjectId: string): Issue {
  const [first] = issuesFromZod(error, path)
  return { ...(first ?? issue('input-other', 'block', [], { path })), subjectIds: [subjectId] }
}
