import type { District } from '@/lib/plan'
import type { DocumentView } from '../_client'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import { BringBack } from '../_frame/bring-back'
import { ButtonLink } from '../_ui/button-link'
import { EmptyState } from '../_ui/empty-state'
import { screenHref } from '../_links/screens'

/** Stands where a plan would: it is gone, cannot be reached, or is on its way. */
export function PlanNotHere({ district, districtId, planId, status }: { district: District | undefined; districtId: string; planId: string; status: DocumentView['status'] }) {
  const isGone = status === 'missing' || status === 'deleted'
  return (
    <Shell district={district && { id: districtId, name: district.name }} screen="plan" title={say('plan.title')}>
      {isGone
        ? <EmptyState title={say(status === 'deleted' ? 'plan.put-away' : 'plan.missing')}>{status === 'deleted' && <BringBack docId={planId} />}<ButtonLink href={screenHref('plan', districtId)} label={say('plan.missing.back')} /></EmptyState>
        : <EmptyState title={status === 'unreachable' ? say('plan.unreachable') : say('plan.loading')} />}
    </Shell>
  )
}
