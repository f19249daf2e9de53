'use client'

import { useState } from 'react'
import { placesOf, surveyKinds, type District, type Place, type SurveyKind } from '@/lib/plan'
import { SiteSymbol } from '../_look/site-symbol'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import { PlaceCard } from './place-card'
import { searchWords } from './place-summary'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** Cards drawn at first of each kind, and more at a time. */
const PAGE = 40

/** All that is on the map, as a list of cards beside it: each opens where it stands. */
export function PlaceList({ search, kind }: { search: string; kind: SurveyKind | undefined }) {
  const { district } = useSurvey()
  const found = foundPlaces(district, search)
  return surveyKinds.filter((one) => kind === undefined || kind === one).map((one) => (
    <KindGroup key={one} kind={one} places={found.filter((place) => place.kind === one)} isSearching={search.trim() !== ''} />
  ))
}

/** Places that every word of a search is found in. */
export function foundPlaces(district: District, search: string): Place[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean)
  return placesOf(district).filter((place) => words.length === 0 || words.every((word) => searchWords(place, district).includes(word)))
}

function KindGroup({ kind, places, isSearching }: { kind: SurveyKind; places: readonly Place[]; isSearching: boolean }) {
  const { placing, place, selectedId, district } = useSurvey()
  const [system] = useUnitSystem()
  const [shownCount, setShownCount] = useState(PAGE)
  if (isSearching && places.length === 0) return null
  const isPlacing = placing?.kind === kind && placing.moveId === undefined
  const shown = places.filter(({ item }, index) => index < shownCount || item.id === selectedId)
  return (
    <section className={styles.group} aria-labelledby={`group-${kind}`}>
      <div className={styles.groupHead}>
        <SiteSymbol kind={kind} size={20} />
        <h2 id={`group-${kind}`} className={styles.groupTitle}>{say(`survey.many.${kind}`)} <span className={styles.count}>{places.length}</span></h2>
        <Button
          size="s" look={isPlacing ? 'primary' : 'quiet'} icon={isPlacing ? 'close' : 'add'} aria-pressed={isPlacing}
          label={isPlacing ? say('survey.place.cancel') : say(`survey.place.${kind}`)}
          onClick={() => { place(isPlacing ? undefined : { kind }) }}
        />
      </div>
      {places.length === 0
        ? <p className={styles.quiet}>{say(`survey.empty.${kind}`)}</p>
        : (
          <ul className={styles.cards}>
            {shown.map((one) => <li key={one.item.id}><PlaceCard place={one} district={district} system={system} /></li>)}
          </ul>
        )}
      {places.length > shownCount && (
        <Button size="s" look="quiet" label={say('survey.more', { count: places.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />
      )}
    </section>
  )
}
