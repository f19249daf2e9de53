'use client'

import { useEffect, useRef } from 'react'
import type { Apparatus, EditBody } from '@/lib/plan'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { Menu } from '../_ui/menu'
import { firstNeeds, firstPlaces, isWaterNamed, missingNeeds } from './first-needs'
import styles from './first-answer.module.css'
import { FIRST_PUMPER, FIRST_TENDER, getTemplate, unitEdit } from './handbook-unit'
import type { Placed } from './place-edit'
import { usePlanBoard } from './plan-context'

/** The few things a first answer needs, ticked off; gone once they are there. */
export function FirstAnswer({ placing, onGuide }: { placing: Placed | undefined; onGuide: (kind: Placed | undefined) => void }) {
  const { district, plan, newId, editBoth } = usePlanBoard()
  const missing = missingNeeds(district, plan)
  const section = useRef<HTMLElement>(null)
  // What was pressed may be gone by what it did: then the keyboard goes on here.
  const missingBefore = useRef(missing.length)
  useEffect(() => {
    if (missingBefore.current !== missing.length && document.activeElement === document.body) section.current?.focus({ preventScroll: true })
    missingBefore.current = missing.length
  }, [missing.length])
  if (missing.length === 0) return null
  const nextPlace = firstPlaces.find((place) => missing.includes(place))
  const isGuiding = placing !== undefined
  const site = plan.fillSites.find(({ pumperId, rate_gpm }) => pumperId === undefined && rate_gpm === undefined)
  const drafts = (id: string): EditBody[] => (site ? [{ kind: 'setFields', collection: 'fillSites', id: site.id, set: { pumperId: id } }] : [])
  const hauls = (id: string): EditBody[] => [{ kind: 'addItem', collection: 'tenders', item: { id: newId(), tenderId: id } }]
  const isFree = ({ id }: Apparatus) => !plan.dumpSites.some(({ pumperId }) => pumperId === id) && !plan.fillSites.some(({ pumperId }) => pumperId === id)
  const pumpers = district.apparatus.filter((unit) => unit.kind === 'pumper' && isFree(unit))
  const tenders = district.apparatus.filter(({ kind }) => kind === 'tender')
  const needsPumper = missing.includes('pumper') && site !== undefined
  const needsTender = missing.includes('tender')
  /** Handbook apparatus for what the district has none of: one act, undone in one. */
  const lacks = [needsPumper && pumpers.length === 0 && FIRST_PUMPER, needsTender && tenders.length === 0 && FIRST_TENDER].filter((key) => key !== false)
  const addLacking = () => {
    const made = lacks.map((key) => {
      const id = newId()
      return { added: unitEdit(getTemplate(key), district, id), given: key === FIRST_TENDER ? hauls(id) : drafts(id) }
    })
    editBoth({ district: made.map(({ added }) => added), plan: made.flatMap(({ given }) => given) }, say('plan.first.vehicles'))
  }
  return (
    <section ref={section} tabIndex={-1} className={styles.first} aria-labelledby="first-answer">
      <h2 id="first-answer" className={styles.title}>{say('plan.first.title')}</h2>
      <ol className={styles.needs}>
        {firstNeeds.map((need) => {
          const isThere = !missing.includes(need)
          return (
            <li key={need} className={styles.need} data-there={isThere}>
              <span className={styles.tick}>{isThere && <Icon name="check" size={14} />}</span>
              <span>{say(`plan.first.${need}`)} <span className={styles.state}>{say(!isThere ? 'plan.first.missing' : need === 'fillSite' && !isWaterNamed(plan) ? 'plan.first.no-water' : 'plan.first.there')}</span></span>
            </li>
          )
        })}
      </ol>
      <div className={styles.acts}>
        {nextPlace && <Button look="primary" icon={isGuiding ? 'close' : 'pick'} aria-pressed={isGuiding} label={say(isGuiding ? 'plan.place.cancel' : 'plan.first.place', { count: firstPlaces.filter((place) => missing.includes(place)).length })} onClick={() => { onGuide(isGuiding ? undefined : nextPlace) }} />}
        {lacks.length > 0 && !isGuiding && <Button look={nextPlace ? 'plain' : 'primary'} icon="add" label={say(`plan.first.add.${lacks.length === 2 ? 'both' : lacks[0] === FIRST_TENDER ? 'tender' : 'pumper'}`)} onClick={addLacking} />}
        {needsPumper && pumpers.length > 0 && <Menu label={say('plan.first.choose-pumper')} items={pumpers.map(({ id, name }) => ({ id, label: name, onSelect: () => { editBoth({ district: [], plan: drafts(id) }, say('plan.pumper')) } }))} />}
        {needsTender && tenders.length > 0 && <Menu label={say('plan.first.choose-tender')} items={tenders.map(({ id, name }) => ({ id, label: name, onSelect: () => { editBoth({ district: [], plan: hauls(id) }, say('plan.added', { name })) } }))} />}
      </div>
      <p className={styles.rest}>{(pumpers.length === 0 || tenders.length === 0) && say('plan.first.handbook')} {say('plan.first.rest')}</p>
    </section>
  )
}
