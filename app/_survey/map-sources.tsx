'use client'

import { useMemo, useState } from 'react'
import { formatQuantity, formatWaterSurface, say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { ChoiceField } from '../_ui/choice-field'
import { SearchBox } from '../_ui/search-box'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'
import { hazardAway_ft, isDraftWater, isOpenWater, listedWater, mapWaterKinds, type MapWater, type MapWaterKind, type WaterOrder } from './map-water'
import { acceptEdit, detailWords, idOfMapWater, nameOfMapWater } from './source-from-map'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'
import type { MapWaters } from './use-map-water'

const PAGE = 25
const SQFT_PER_ACRE = 43_560
/** Sizes to begin the list at, by what lies under a quarter acre to what no shuttle empties. */
const sizes_acre = [0.25, 1, 5] as const

/** Water of the map that is not in the survey yet: looked at, picked, and taken in together, or left. */
export function MapSources({ found, onLook }: { found: MapWaters; onLook: (water: MapWater) => void }) {
  const { district, edit } = useSurvey()
  const sayDone = useSayDone()
  const [system] = useUnitSystem()
  const [kind, setKind] = useState<'draft' | 'open' | MapWaterKind | undefined>('draft')
  const [atLeast, setAtLeast] = useState<string>()
  const [search, setSearch] = useState('')
  const [wantedOrder, setOrder] = useState<WaterOrder>('road')
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set())
  const [shownCount, setShownCount] = useState(PAGE)
  const hazards = useMemo(() => district.hazards.map(({ point }) => point), [district.hazards])
  const open = useOpenWater(found)
  const order = wantedOrder === 'hazard' && hazards.length === 0 ? 'road' : wantedOrder
  const listed = useMemo(
    () => listedWater(open, { kind, search, order, atLeast_sqft: atLeast === undefined ? undefined : Number(atLeast) * SQFT_PER_ACRE }, hazards, (one) => nameOfMapWater(one, system)),
    [open, kind, search, order, atLeast, hazards, system])
  if (found.status !== 'ready') return <p className={styles.quiet} role="status">{say(found.status === 'loading' ? 'survey.check.loading' : 'survey.check.failed')}</p>
  if (open.length === 0) return <p className={styles.quiet}>{say(found.water.length === 0 ? 'survey.check.none' : 'survey.check.all-taken')}</p>
  const kinds = mapWaterKinds.filter((one) => open.some((water) => water.kind === one))
  const shown = listed.slice(0, shownCount)
  const hydrantCount = open.filter((one) => !isDraftWater(one)).length
  const chosen = open.filter((one) => picked.has(idOfMapWater(one)))
  const pick = (ids: readonly string[], isPicked: boolean) => { setPicked(new Set(isPicked ? [...picked, ...ids] : [...picked].filter((id) => !ids.includes(id)))) }
  const accept = () => {
    const bodies = chosen.map((water) => acceptEdit(water, found.dataDate, system))
    const what = say('survey.check.taken', { count: bodies.length, name: String(bodies[0]?.item.name) })
    // The list stays where it is, so that one can go on down it.
    if (edit(bodies, say('survey.check.act', { count: bodies.length, name: String(bodies[0]?.item.name) }))) sayDone(what)
    setPicked(new Set())
  }
  const far = (away_ft: number) => (away_ft < 2640 ? formatQuantity(away_ft, 'ft', system, { digits: 0 }) : formatQuantity(away_ft / 5280, 'mi', system))
  return (
    <div className={styles.fields}>
      <p className={styles.quiet}>{say('survey.check.text')}</p>
      <SearchBox label={say('survey.check.search')} search={search} onSearch={(text) => { setSearch(text); setShownCount(PAGE) }} foundCount={listed.length} />
      <div className={styles.checkFilter}>
        <ChoiceField
          label={say('survey.check.filter')} none={say('survey.check.filter.all', { count: open.length })} value={kind} isWide
          choices={[
            { value: 'draft' as const, label: say('survey.check.filter.kind', { kind: say('survey.check.kind.draft'), count: open.filter(isDraftWater).length }) },
            ...(open.some(isOpenWater) ? [{ value: 'open' as const, label: say('survey.check.filter.kind', { kind: say('survey.check.kind.open'), count: open.filter(isOpenWater).length }) }] : []),
            ...kinds.map((value) => ({ value, label: say('survey.check.filter.kind', { kind: say(`survey.check.kind.${value}`), count: open.filter((one) => one.kind === value).length }) })),
          ]}
          onCommit={(value) => { setKind(value); setShownCount(PAGE) }}
        />
        <ChoiceField
          label={say('survey.check.at-least')} none={say('survey.check.any-size')} value={atLeast}
          choices={sizes_acre.map((size) => ({ value: String(size), label: formatWaterSurface(size * SQFT_PER_ACRE, system) }))}
          onCommit={(value) => { setAtLeast(value); setShownCount(PAGE) }}
        />
        <ChoiceField
          label={say('survey.check.order')} value={order}
          choices={(['road', 'hazard', 'size'] as const).filter((one) => one !== 'hazard' || hazards.length > 0).map((value) => ({ value, label: say(`survey.check.order.${value}`) }))}
          onCommit={(value) => { setOrder(value ?? 'road'); setShownCount(PAGE) }}
        />
      </div>
      <ul className={styles.checkList} aria-label={say('survey.check.title')}>
        {shown.map((water) => {
          const id = idOfMapWater(water), hazard_ft = hazardAway_ft(water, hazards)
          const facts = [
            ...(water.surface_sqft !== undefined && water.name !== '' ? [formatWaterSurface(water.surface_sqft, system)] : []),
            ...(water.road ? [say('survey.check.road', { distance: far(water.road.away_ft) })] : []),
            ...(Number.isFinite(hazard_ft) ? [say('survey.check.hazard', { distance: far(hazard_ft) })] : []),
            ...(water.details === '' ? [] : [detailWords(water.details, system)]),
          ]
          return (
            <li key={id} className={styles.checkRow}>
              <CheckField label={nameOfMapWater(water, system)} hint={facts.join(' · ')} isChecked={picked.has(id)} onCommit={(isPicked) => { pick([id], isPicked) }} />
              <Button size="s" look="quiet" icon="search" label={say('survey.check.look')} aria-label={say('survey.check.look-at', { name: nameOfMapWater(water, system) })} onClick={() => { onLook(water) }} />
            </li>
          )
        })}
      </ul>
      {kind === 'draft' && hydrantCount > 0 && <p className={styles.quiet}>{say('survey.check.hydrants-left-out', { count: hydrantCount })}</p>}
      {listed.length === 0 && <p className={styles.quiet}>{say('survey.check.nothing')}</p>}
      {listed.length > shownCount && <Button size="s" look="quiet" label={say('survey.more', { count: listed.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />}
      <div className={styles.checkActs}>
        <Button look="primary" icon="add" disabled={chosen.length === 0} label={say('survey.check.accept', { count: chosen.length })} onClick={accept} />
        {shown.length > 0 && (shown.every((one) => picked.has(idOfMapWater(one)))
          ? <Button size="s" look="quiet" label={say('survey.check.pick-none')} onClick={() => { setPicked(new Set()) }} />
          : <Button size="s" look="quiet" label={say('survey.check.pick-shown', { count: shown.length })} onClick={() => { pick(shown.map(idOfMapWater), true) }} />)}
      </div>
    </div>
  )
}

/** Water of the map that the survey has not taken in. */
function useOpenWater({ water }: MapWaters): readonly MapWater[] {
  const { district } = useSurvey()
  return useMemo(() => {
    const taken = new Set(district.sources.map(({ id }) => id as string))
    return water.filter((one) => !taken.has(idOfMapWater(one)))
  }, [water, district.sources])
}

/** How much water the map offers, in a line. */
export function MapWaterCount({ found }: { found: MapWaters }) {
  const open = useOpenWater(found)
  const openCount = open.filter(isOpenWater).length
  if (found.status !== 'ready') return found.status === 'loading' ? say('survey.check.loading') : say('survey.check.failed')
  return open.length === 0 ? say(found.water.length === 0 ? 'survey.check.none' : 'survey.check.all-taken') : say('survey.check.count', { openCount, taggedCount: open.length - openCount })
}
