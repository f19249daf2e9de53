'use client'

import { useMemo, useState } from 'react'
import { surveyKinds, type Place, type SurveyKind } from '@/lib/plan'
import { SiteSymbol } from '../_look/site-symbol'
import { say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import { PlaceFields } from './opened-parts'
import { PlaceCard } from './place-card'
import { placeSummaries } from './place-summary'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** Cards drawn at first of each kind, and more at a time. */
const PAGE = 40

/** All that is on the map, as a list of cards beside it: each opens where it stands. */
export function PlaceList({ found, isSearching, kind }: { found: readonly Place[]; isSearching: boolean; kind: SurveyKind | undefined }) {
  return surveyKinds.filter((one) => kind === undefined || kind === one).map((one) => (
    <KindGroup key={one} kind={one} found={found} isSearching={isSearching} />
  ))
}

function KindGroup({ kind, found, isSearching }: { kind: SurveyKind; found: readonly Place[]; isSearching: boolean }) {
  const { placing, place, select, selectedId, district } = useSurvey()
  const [system] = useUnitSystem()
  const [shownCount, setShownCount] = useState(PAGE)
  const places = useMemo(() => found.filter((one) => one.kind === kind), [found, kind])
  // Said once for each state of the district, whatever is looked for or chosen meanwhile.
  const summaryOf = useMemo(() => placeSummaries(district, system), [district, system])
  const cards = places.filter(({ item }, index) => index < shownCount || item.id === selectedId)
  if (isSearching && places.length === 0) return null
  const isPlacing = placing?.kind === kind && placing.moveId === undefined && placing.sourceId === undefined
  return (
    <section className={styles.group} aria-labelledby={`group-${kind}`}>
      <div className={styles.groupHead}>
        <SiteSymbol kind={kind} size={20} />
        <h2 id={`group-${kind}`} className={styles.groupTitle}>{say(`survey.many.${kind}`)} <span className={styles.count}>{places.length}</span></h2>
        <Button
          size="s" look={isPlacing ? 'primary' : 'quiet'} icon="add" aria-pressed={isPlacing} label={say(`survey.place.${kind}`)}
          onClick={() => { place(isPlacing ? undefined : { kind }) }}
        />
      </div>
      {places.length === 0
        ? <p className={styles.quiet}>{say(`survey.empty.${kind}`)}</p>
        : (
          <ul className={styles.cards}>
            {cards.map((one) => (
              <li key={one.item.id}>
                <PlaceCard id={one.item.id} name={one.item.name} {...summaryOf(one)} isOpen={one.item.id === selectedId} onSelect={select}>
                  {one.item.id === selectedId && <PlaceFields place={one} />}
                </PlaceCard>
              </li>
            ))}
          </ul>
        )}
      {places.length > shownCount && (
        <Button size="s" look="quiet" label={say('survey.more', { count: places.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />
      )}
    </section>
  )
}
