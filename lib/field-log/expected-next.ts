import type { PostKind, SiteEventKind } from '../plan'
import { tenderSteps } from './tender-steps'

/** What a tender does at a post, in its order; none where no tender stops. */
export const stepsAt = (post: PostKind): readonly SiteEventKind[] => (post === 'fill' || post === 'dump' ? tenderSteps[post] : [])

/**
 * What is to be seen next of a tender at a post.
 *
 * @param last what was last seen of it there; undefined: nothing, or it was seen elsewhere since
 */
export function expectedNext(post: PostKind, last: SiteEventKind | undefined): SiteEventKind | undefined {
  const steps = stepsAt(post)
  const at = last === undefined ? -1 : steps.indexOf(last)
  return steps[(at + 1) % steps.length] ?? steps[0]
}
