'use client'

import { useState } from 'react'
import { sourceKinds, type SourceKind } from '@/lib/osm'
import { getClient } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { useToast } from '../_ui/toast'
import { acceptEdit, detailWords, idOfMapSource } from './source-from-map'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'
import type { MapSource, MapSources as Found } from './use-map-sources'

const PAGE = 25

/** Sources of the map data that are not in the survey yet: each is looked at and taken in, or left. */
export function MapSources({ found, onLook }: { found: Found; onLook: (source: MapSource) => void }) {
  const { district, edit } = useSurvey()
  const toast = useToast()
  const [kind, setKind] = useState<SourceKind>()
  const [shownCount, setShownCount] = useState(PAGE)
  if (found.status !== 'ready') return <p className={styles.quiet} role="status">{say(found.status === 'loading' ? 'survey.check.loading' : 'survey.check.failed')}</p>
  const taken = new Set(district.sources.map(({ id }) => id as string))
  const open = found.sources.filter((source) => !taken.has(idOfMapSource(source)))
  const kinds = sourceKinds.filter((one) => open.some((source) => source.kind === one))
  const listed = open.filter((source) => kind === undefined || source.kind === kind).sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))
  if (open.length === 0) return <p className={styles.quiet}>{say(found.sources.length === 0 ? 'survey.check.none' : 'survey.check.all-taken')}</p>
  const accept = (source: MapSource) => {
    const body = acceptEdit(source, found.dataDate)
    const name = String(body.item.name)
    // The list stays where it is, so that one can go on down it.
    if (edit(body, say('survey.check.act', { name }))) toast({ text: say('survey.check.taken', { name }), onUndo: () => { void getClient().undo() } })
  }
  return (
    <div className={styles.fields}>
      <p className={styles.quiet}>{say('survey.check.text')}</p>
      <ChoiceField
        label={say('survey.check.filter')} none={say('survey.check.filter.all', { count: open.length })} value={kind}
        choices={kinds.map((value) => ({ value, label: say('survey.check.filter.kind', { kind: say(`survey.check.kind.${value}`), count: open.filter((source) => source.kind === value).length }) }))}
        onCommit={(value) => { setKind(value); setShownCount(PAGE) }}
      />
      <ul className={styles.checkList} aria-label={say('survey.check.title')}>
        {listed.slice(0, shownCount).map((source) => (
          <li key={source.osmId} className={styles.checkRow}>
            <span className={styles.checkWords}>
              <span className={styles.checkName}>{source.name || say(`survey.check.kind.${source.kind}`)}</span>
              {source.details !== '' && <span className={styles.how}>{detailWords(source.details)}</span>}
            </span>
            <Button size="s" look="quiet" icon="search" label={say('survey.check.look')} onClick={() => { onLook(source) }} />
            <Button size="s" icon="add" label={say('survey.check.accept')} onClick={() => { accept(source) }} />
          </li>
        ))}
      </ul>
      {listed.length > shownCount && <Button size="s" look="quiet" label={say('survey.more', { count: listed.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />}
    </div>
  )
}

/** What a rural officer looks for first comes first; private pools last. */
const order: readonly SourceKind[] = ['suctionPoint', 'pondHydrant', 'pond', 'cistern', 'tank', 'hydrant', 'pool']

