'use client'

import { useDistrict, useDocumentList } from '../_client'
import { Conflicts } from '../_frame/conflicts'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import '../_text/areas/exchange'
import '../_text/areas/survey'
import { ButtonLink } from '../_ui/button-link'
import { EmptyState } from '../_ui/empty-state'
import { UndoButtons } from '../_frame/undo-buttons'
import { screenHref } from '../_links/screens'
import { BringIn } from './bring-in'
import styles from './exchange.module.css'
import { TakeOut } from './take-out'

/** Places of a district and its plans, in from and out to the files of others. */
export function ExchangeScreen({ districtId }: { districtId: string }) {
  const { doc: district, status } = useDistrict(districtId)
  const plans = useDocumentList().entries.filter((entry) => entry.kind === 'plan' && entry.districtId === districtId && entry.deletedAt === undefined)
  const shellDistrict = district && { id: districtId, name: district.name }
  if (!district) {
    const words = status === 'missing' || status === 'deleted' ? 'survey.missing' : status === 'unreachable' ? 'survey.unreachable' : 'survey.loading'
    return <Shell district={shellDistrict} screen="survey" title={say('exchange.title')}><EmptyState title={say(words)}><ButtonLink href="/" label={say('shell.home')} /></EmptyState></Shell>
  }
  return (
    <Shell district={shellDistrict} screen="survey" actions={<UndoButtons />}>
      <div className={styles.page}>
        <header className={styles.head}>
          <div>
            <h1 className={styles.title}>{say('exchange.title')}</h1>
            <p className={styles.quiet}>{say('exchange.lead')}</p>
          </div>
          <ButtonLink href={screenHref('survey', districtId)} label={say('exchange.back')} icon="arrowLeft" size="s" />
        </header>
        <Conflicts docIds={[districtId]} names={(id) => district.sources.find((source) => source.id === id)?.name} />
        <BringIn district={district} plans={plans} />
        <TakeOut district={district} />
        {district.map && (
          <section className={styles.part} aria-labelledby="exchange-map">
            <h2 id="exchange-map" className={styles.subtitle}>{say('exchange.map-water')}</h2>
            <p className={styles.quiet}>{say('exchange.map-water.text')}</p>
            <ButtonLink href={`${screenHref('survey', districtId)}?open=water`} label={say('exchange.map-water.open')} size="s" iconAfter="arrowRight" />
          </section>
        )}
      </div>
    </Shell>
  )
}
