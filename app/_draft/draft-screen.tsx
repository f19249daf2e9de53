'use client'

import { useDeferredValue } from 'react'
import { PrintedOn } from '../_frame/printed-on'
import { Shell } from '../_frame/shell'
import { bookHref } from '../_links/book-href'
import { backUpCardHref } from '../_links/draft-href'
import { say } from '../_text'
import '../_text/areas/draft'
import '../_text/areas/book'
import { ButtonLink } from '../_ui/button-link'
import { UndoButtons } from '../_frame/undo-buttons'
import { Caution } from '../_ui/caution'
import { EmptyState } from '../_ui/empty-state'
import { itemHref, screenHref } from '../_links/screens'
import shared from '../_look/shared.module.css'
import styles from './draft.module.css'
import { SheetAnswer } from './sheet-answer'
import { SheetCards } from './sheet-cards'
import { SheetControls } from './sheet-controls'
import { useDraftSheet } from './use-draft-sheet'

/** What a pumper can draw at a draft site, how long the source lasts, and how to prime there. */
export function DraftScreen({ districtId, draftSiteId }: { districtId: string; draftSiteId: string }) {
  const board = useDraftSheet(districtId, draftSiteId)
  const { status, district, draftSite, pump, sheet, names, here } = board
  // The cards may lag behind a moving slider; the answer may not.
  const slow = useDeferredValue(sheet)
  const slowHere = useDeferredValue(here)
  const source = district?.sources.find(({ id }) => id === draftSite?.sourceId)
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="survey" actions={<UndoButtons />}>
      {status !== 'ready' || !district || !draftSite
        ? <EmptyState title={say(status === 'loading' ? 'draft.loading' : 'draft.missing')}>{status === 'missing' && <ButtonLink href={screenHref('survey', districtId)} label={say('draft.to-survey')} />}</EmptyState>
        : (
          <div className={styles.page}>
            <PrintedOn />
            <header className={styles.head}>
              <div>
                <p className={styles.over}>{source ? say('draft.on-source', { source: source.name }) : say('draft.no-source')}</p>
                <h1 className={styles.title}>{draftSite.name}</h1>
              </div>
              <div className={styles.actions}>
                <ButtonLink href={itemHref('survey', districtId, draftSite.id)} label={say('draft.to-survey')} icon="arrowLeft" size="s" />
                <ButtonLink href={bookHref(here.districtId, { draftSiteId: here.draftSiteId })} label={say('book.print-draft')} icon="print" size="s" />
                {pump?.kind === 'pumper' && <ButtonLink href={backUpCardHref(here)} label={say('draft.card.open')} icon="print" size="s" />}
              </div>
            </header>
            {sheet && <SheetAnswer sheet={sheet} names={names} />}
            <div className={styles.columns}>
              <SheetControls board={board} />
              <div className={styles.answers}>
                <h2 className={shared.heard}>{say('draft.detail')}</h2>
                {!sheet || !pump
                  ? <EmptyState title={say(pump ? 'draft.no-rating' : 'draft.no-pump')} text={say('draft.no-rating.text')} />
                  : <SheetCards sheet={slow ?? sheet} names={names} planned_gpm={board.planned_gpm} here={slowHere} />}
                <Caution title={say('caution.title')} kinds={['planning-aid', 'banks', 'contaminated']} />
              </div>
            </div>
          </div>
        )}
    </Shell>
  )
}
