'use client'

import type { FillSite } from '@/lib/plan'
import { formatQuantity, say } from '../_text'
import { Button } from '../_ui/button'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { draftSitesNear, JOIN_REACH_FT } from './place-edit'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

const OFFERED_COUNT = 3
/** Under this a distance is said in feet. */
const FEET_UP_TO_FT = 2640

/** Which draft site the fill site stands at and how far off; where none is near, the question, with the nearest as answers. */
export function DraftsAt({ site }: { site: FillSite }) {
  const { district, editPlan } = usePlanBoard()
  const [system] = useUnitSystem()
  const far = (away_ft: number) => (away_ft < FEET_UP_TO_FT ? formatQuantity(away_ft, 'ft', system, { digits: 0 }) : formatQuantity(away_ft / 5280, 'mi', system))
  const near = draftSitesNear(district, site.point)
  const own = near.find((one) => one.site.id === site.draftSiteId)
  if (own) {
    const isFar = own.away_ft > JOIN_REACH_FT
    return <p className={joinClasses(styles.quiet, isFar && styles.attention)} role="note">{say(isFar ? 'plan.drafts-far' : 'plan.drafts-at', { name: own.site.name, distance: far(own.away_ft) })}</p>
  }
  if (near.length === 0 || site.sourceId || site.rate_gpm !== undefined) return null
  return (
    <fieldset className={styles.set}>
      <legend className={styles.attention}>{say('plan.drafts-ask', { reach: far(JOIN_REACH_FT) })}</legend>
      {near.slice(0, OFFERED_COUNT).map(({ site: { id, name, point }, away_ft }) => (
        <Button
          key={id} size="s" label={say('plan.drafts-move', { name, distance: far(away_ft) })}
          onClick={() => { editPlan({ kind: 'setFields', collection: 'fillSites', id: site.id, set: { draftSiteId: id, point } }, say('plan.draftSite')) }}
        />
      ))}
      <p className={styles.quiet}>{say('plan.drafts-none')}</p>
    </fieldset>
  )
}
