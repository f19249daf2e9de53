'use client'

import { useMemo } from 'react'
import { backUpCard } from '@/lib/priming'
import { backUpInputs } from '@/lib/supply'
import { Shell } from '../../_frame/shell'
import { draftHref, drillHref } from '../../_links/draft-href'
import { say } from '../../_text'
import '../../_text/areas/draft'
import { Button } from '../../_ui/button'
import { ButtonLink } from '../../_ui/button-link'
import { EmptyState } from '../../_ui/empty-state'
import { useSiteFar } from '../../_survey/use-site-far'
import { useDraftSheet } from '../use-draft-sheet'
import { BackUpCard } from './back-up-card'
import styles from './back-up-card.module.css'

/** The back-up prime card of a pumper at a draft site, as it prints on one page. */
export function BackUpCardScreen({ districtId, draftSiteId }: { districtId: string; draftSiteId: string }) {
  const { status, district, draftSite, pump, sheet, here } = useDraftSheet(districtId, draftSiteId)
  const far = useSiteFar(district, draftSite)
  const card = useMemo(() => {
    if (!sheet || pump?.kind !== 'pumper') return undefined
    const inputs = backUpInputs(pump, sheet)
    return { inputs, card: backUpCard(inputs.rig, inputs.site, inputs.openDischarge_gpm) }
  }, [sheet, pump])
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="survey">
      {status === 'loading' && <EmptyState title={say('draft.loading')} />}
      {status === 'missing' && <EmptyState title={say('draft.missing')} />}
      {status === 'ready' && (
        <div className={styles.screen}>
          <div className={styles.tools}>
            <ButtonLink href={draftHref(here)} label={say('draft.card.back')} icon="arrowLeft" size="s" />
            <ButtonLink href={drillHref(here)} label={say('draft.drill')} icon="drill" size="s" />
            <Button label={say('draft.card.print')} icon="print" look="primary" size="s" onClick={() => { window.print() }} />
          </div>
          {card && sheet && pump && draftSite
            ? <BackUpCard sheet={sheet} inputs={card.inputs} card={card.card} far={far} />
            : <EmptyState title={say('draft.card.none')} />}
        </div>
      )}
    </Shell>
  )
}
