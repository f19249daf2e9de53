import type { Bundle } from '../../plan'
import type { Candidate } from '../candidate'
import type { ResolveWays } from '../ways-with-closure'
import { dumpSiteChanges } from './dump-site-changes'
import { fillSiteChanges } from './fill-site-changes'
import { moreTenders } from './more-tenders'
import { otherDraftSites } from './other-draft-sites'
import { otherPumpers } from './other-pumpers'
import { otherRoads } from './other-roads'

/**
 * Every single change that the district's own equipment allows, each as edits of the plan.
 *
 * Nothing is invented: a tender, pumper, tank, hose or suction is one that the district or its mutual aid has.
 * A load is never made smaller, and nobody's time is made shorter by decree. A hose relay that brings the fill
 * site nearer is one more generator in this list.
 *
 * @param resolve finds ways; used for the road that is left when one is closed
 */
export function candidatesOf(bundle: Bundle, resolve: ResolveWays): Candidate[] {
  return [
    ...otherDraftSites(bundle), ...otherPumpers(bundle), ...fillSiteChanges(bundle), ...otherRoads(bundle, resolve),
    ...moreTenders(bundle), ...dumpSiteChanges(bundle),
  ]
}
