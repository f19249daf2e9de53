'use client'

import { useMemo, useState } from 'react'
import { districtLists, lossesOf, placeLists, placesOf, type PlaceList, type WrittenFormat } from '@/lib/exchange'
import type { District } from '@/lib/plan'
import { bundleFromDocuments, usePlansOf } from '../_client'
import { say } from '../_text'
import '../_text/areas/exchange'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { saveFile } from '../_ui/save-file'
import { Segments } from '../_ui/segments'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { listName } from './exchange-words'
import styles from './exchange.module.css'
import { findWays } from './find-ways'
import { fileFormats, writePlaces, type FileFormat } from './write-places'

const planParts = placeLists.filter((list) => !districtLists.some((one) => one === list))
const wayName = (from: string, to: string): string => say('exchange.way', { from, to })

/** What of a district goes out, in which format, and what that format cannot hold. */
export function TakeOut({ district }: { district: District }) {
  const [system] = useUnitSystem()
  const toast = useToast()
  const plans = usePlansOf(district.id, true)
  const [format, setFormat] = useState<FileFormat>('geojson')
  const [units, setUnits] = useState<'us' | 'metric'>(system === 'us' ? 'us' : 'metric')
  const [left, setLeft] = useState<ReadonlySet<PlaceList>>(new Set(['ways']))
  const [isMaking, setMaking] = useState(false)
  const counts = useMemo(() => {
    const found = new Map<PlaceList, number>()
    for (const { list } of placesOf(district, plans, { lists: new Set(placeLists), wayName })) found.set(list, (found.get(list) ?? 0) + 1)
    return found
  }, [district, plans])
  const countOf = (list: PlaceList): number => counts.get(list) ?? 0
  const lists = placeLists.filter((list) => !left.has(list) && (list === 'ways' ? plans.length > 0 && district.roads : countOf(list) > 0))
  const count = lists.reduce((sum, list) => sum + countOf(list), 0)
  const written: WrittenFormat = format === 'csv' && units === 'metric' ? 'csv-metric' : format
  const check = (list: PlaceList) => (isOut: boolean) => { setLeft(new Set(isOut ? [...left].filter((one) => one !== list) : [...left, list])) }
  const save = async () => {
    setMaking(true)
    const ways = lists.includes('ways') ? await findWays(plans.map((plan) => bundleFromDocuments(district, plan))) : undefined
    const places = placesOf(district, plans, { lists: new Set(lists), wayName, ...(ways && { ways }) })
    const title = say('exchange.file', { district: district.name })
    const { name, text, type } = await writePlaces(written, places, title, district.roads?.attribution ?? district.map?.attribution)
    saveFile(name, text, type)
    setMaking(false)
    toast({ text: say('exchange.saved', { file: name }) })
  }
  const losses = lossesOf(written)
  return (
    <section className={styles.part} aria-labelledby="exchange-out">
      <h2 id="exchange-out" className={styles.subtitle}>{say('exchange.out')}</h2>
      <Segments label={say('exchange.format')} value={format} choices={fileFormats.map((value) => ({ value, label: say(`exchange.format.${value}`) }))} onCommit={setFormat} />
      <p className={styles.quiet}>{say(`exchange.format.text.${format}`)}</p>
      {format === 'csv' && <Segments label={say('exchange.units')} value={units} choices={[{ value: 'us', label: say('exchange.units.us') }, { value: 'metric', label: say('exchange.units.metric') }]} onCommit={setUnits} />}
      <fieldset className={styles.checks}>
        <legend>{say('exchange.lists')}</legend>
        {districtLists.map((list) => <CheckField key={list} label={say('exchange.counted', { list: listName(list), count: countOf(list) })} isChecked={!left.has(list)} onCommit={check(list)} />)}
      </fieldset>
      <fieldset className={styles.checks}>
        <legend>{say('exchange.plans')}</legend>
        {plans.length === 0 && <p className={styles.quiet}>{say('exchange.plans.none')}</p>}
        {plans.length > 0 && planParts.map((list) => (list !== 'ways'
          ? <CheckField key={list} label={say('exchange.counted', { list: listName(list), count: countOf(list) })} isChecked={!left.has(list)} onCommit={check(list)} />
          : district.roads && <CheckField key={list} label={listName(list)} hint={say('exchange.ways.hint')} isChecked={!left.has(list)} onCommit={check(list)} />))}
      </fieldset>
      <div>
        <p className={styles.quiet}>{say(losses.length === 0 ? 'exchange.lost.nothing' : 'exchange.lost')}</p>
        <ul className={styles.lost}>{losses.map(({ code }) => <li key={code}>{say(`exchange.lost.${code}`)}</li>)}</ul>
        <p className={styles.quiet}>{say('exchange.never')}</p>
      </div>
      <div className={styles.take}>
        <Button look="primary" icon="arrowRight" disabled={(count === 0 && !lists.includes('ways')) || isMaking} label={isMaking ? say('exchange.making') : say('exchange.save', { count })} onClick={() => { void save() }} />
      </div>
    </section>
  )
}
