import type { ExerciseView } from '@/lib/exercise'
import type { Role } from '@/lib/plan'

/** What a seat would know at the moment: its own place, and what comes over the radio anyhow. */
export type SeatView = {
  readonly hasFlow: boolean
  readonly hasEngine: boolean
  readonly hasMap: boolean
  readonly hasTroubles: boolean
  readonly tanks: ExerciseView['tanks']
  readonly fills: ExerciseView['fills']
  readonly tenders: ExerciseView['tenders']
}

/**
 * The view from a seat. Attack knows its own water. A dump or fill site knows what stands there and who is there or on the
 * way to it. Water supply knows where everybody is, and no level it is not told. Who leads sees all.
 *
 * @param siteId the site of a dump or fill seat; absent: none is seen
 */
export function seenFrom(view: ExerciseView, role: Role, siteId?: string): SeatView {
  const nothing = { hasFlow: false, hasEngine: false, hasMap: false, hasTroubles: false, tanks: [], fills: [], tenders: [] }
  const here = view.tenders.filter((tender) => tender.siteId === siteId)
  switch (role) {
    case 'facilitator':
      return { hasFlow: true, hasEngine: true, hasMap: true, hasTroubles: true, tanks: view.tanks, fills: view.fills, tenders: view.tenders }
    case 'waterSupply':
      return { ...nothing, hasFlow: true, hasMap: true, tenders: view.tenders }
    case 'attack':
      return { ...nothing, hasFlow: true, hasEngine: true }
    case 'dumpSite':
      return { ...nothing, tanks: view.tanks.filter(({ dumpSiteId }) => dumpSiteId === siteId), tenders: here }
    case 'fillSite':
      return { ...nothing, fills: view.fills.filter(({ fillSiteId }) => fillSiteId === siteId), tenders: here }
  }
}
