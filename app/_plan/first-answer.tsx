'use client'

import dynamic from 'next/dynamic'
import { useEffect, useRef, type RefObject } from 'react'
import type { Apparatus, EditBody } from '@/lib/plan'
import { isNowhere } from '../_survey/is-nowhere'
import { inUnits, say } from '../_text'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Menu } from '../_ui/menu'
import { Step } from '../_ui/step'
import steps from '../_ui/steps.module.css'
import { useUnitSystem } from '../_ui/unit-system-context'
import { itemHref } from '../_links/screens'
import { firstNeeds, firstPlaces, isAllWaterNamed, missingNeeds, missingNext, nextNeeds, type FirstNeed, type NextNeed } from './first-needs'
import styles from './first-answer.module.css'
import { FIRST_PUMPER, FIRST_TENDER, getTemplate, unitEdit } from './handbook-unit'
import type { Placed } from './place-edit'
import { usePlanBoard } from './plan-context'

/** Only a district that lies nowhere yet asks where it does. */
const WhereItLies = dynamic(() => import('../_survey/where-it-lies').then((made) => made.WhereItLies), { ssr: false })

type Props = {
  placing: Placed | undefined
  onGuide: (kind: Placed | undefined) => void
  /** Opens the card of the fire ground. */
  onFire: () => void
}

/** The few things a first answer needs, ticked off; after them what says when there is water and whether it is enough. Gone once all is there. */
export function FirstAnswer({ placing, onGuide, onFire }: Props) {
  const { district, plan } = usePlanBoard()
  const missing = missingNeeds(district, plan)
  const next = missingNext(district, plan)
  const guide = useRef<HTMLDivElement>(null)
  useFocusKept(guide, missing.length + next.length, missing.length === firstNeeds.length)
  return (
    <div ref={guide} tabIndex={-1} role="group" aria-label={say('plan.guide')} className={styles.guide}>
      {missing.length > 0 ? <FirstNeeds missing={missing} placing={placing} onGuide={onGuide} /> : next.length > 0 && <NextNeeds missing={next} onFire={onFire} />}
    </div>
  )
}

function FirstNeeds({ missing, placing, onGuide }: Pick<Props, 'placing' | 'onGuide'> & { missing: readonly FirstNeed[] }) {
  const { district, plan, newId, editBoth, editDistrict } = usePlanBoard()
  const [system] = useUnitSystem()
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
    <section className={steps.panel} aria-labelledby="first-answer">
      <h2 id="first-answer" className={steps.title}>{say('plan.first.title')}</h2>
      {isNowhere(district, plan) && <WhereItLies onSay={(body, label) => { editDistrict(body, label) }} />}
      <ol className={steps.steps}>
        {firstNeeds.map((need) => <Need key={need} words={say(`plan.first.${need}`)} isThere={!missing.includes(need)} {...(need === 'fillSite' && !isAllWaterNamed(district, plan) && { but: say('plan.first.no-water') })} />)}
      </ol>
      <div className={steps.acts}>
        {nextPlace && <Button look="primary" icon="pick" aria-pressed={isGuiding} label={say('plan.first.place', { count: firstPlaces.filter((place) => missing.includes(place)).length })} onClick={() => { onGuide(isGuiding ? undefined : nextPlace) }} />}
        {lacks.length > 0 && !isGuiding && <Button look={nextPlace ? 'plain' : 'primary'} icon="add" label={say(`plan.first.add.${lacks.length === 2 ? 'both' : lacks[0] === FIRST_TENDER ? 'tender' : 'pumper'}`)} onClick={addLacking} />}
        {needsPumper && pumpers.length > 0 && <Menu label={say('plan.first.choose-pumper')} items={pumpers.map(({ id, name }) => ({ id, label: name, onSelect: () => { editBoth({ district: [], plan: drafts(id) }, say('plan.pumper')) } }))} />}
        {needsTender && tenders.length > 0 && <Menu label={say('plan.first.choose-tender')} items={tenders.map(({ id, name }) => ({ id, label: name, onSelect: () => { editBoth({ district: [], plan: hauls(id) }, say('plan.added', { name })) } }))} />}
      </div>
      <p className={steps.rest}>{(pumpers.length === 0 || tenders.length === 0) && inUnits(say('plan.first.handbook'), system)} {say('plan.first.rest')}</p>
    </section>
  )
}

/** When there is water, and whether it is enough: asked for once the first answer stands. */
function NextNeeds({ missing, onFire }: { missing: readonly NextNeed[]; onFire: () => void }) {
  const { district, plan, editPlan } = usePlanBoard()
  const engines = district.apparatus.filter(({ kind, tank_gal }) => kind === 'pumper' && tank_gal)
  const isNamed = plan.firstDueId !== undefined
  return (
    <section className={steps.panel} aria-labelledby="next-needs">
      <h2 id="next-needs" className={steps.title}>{say('plan.next.title')}</h2>
      <ol className={steps.steps}>{nextNeeds.map((need) => <Need key={need} words={say(`plan.next.${need}`)} isThere={!missing.includes(need)} />)}</ol>
      <div className={steps.acts}>
        {missing.includes('firstDue') && !isNamed && engines.length > 0 && (
          <Menu label={say('plan.next.choose-engine')} items={engines.map(({ id, name }) => ({ id, label: name, onSelect: () => { editPlan({ kind: 'setFields', set: { firstDueId: id } }, say('plan.first-due')) } }))} />
        )}
        {missing.includes('firstDue') && !isNamed && engines.length === 0 && <Button label={say('plan.next.choose-engine')} onClick={onFire} />}
        {missing.includes('firstDue') && plan.firstDueId !== undefined && <ButtonLink label={say('plan.next.tank')} href={itemHref('resources', district.id, plan.firstDueId)} />}
        {missing.includes('need') && <Button label={say('plan.next.enter-need')} onClick={onFire} />}
      </div>
      <p className={steps.rest}>{say('plan.next.why')}</p>
    </section>
  )
}

/** `but`: what it still lacks though it is there. */
function Need({ words, isThere, but }: { words: string; isThere: boolean; but?: string }) {
  return <Step isDone={isThere} state={isThere ? (but ?? say('plan.first.there')) : say('plan.first.missing')}>{words}</Step>
}

/** A menu that closes has let go of the keyboard by then. */
const SETTLED_MS = 60

/**
 * What was pressed may be gone by what it did: then the keyboard goes on at the guide.
 *
 * @param isFresh a plan with nothing in it, just begun: the keyboard begins here too
 */
function useFocusKept(guide: RefObject<HTMLElement | null>, missingCount: number, isFresh: boolean): void {
  const before = useRef<number>(undefined)
  useEffect(() => {
    const isChanged = before.current === undefined ? isFresh : before.current !== missingCount
    before.current = missingCount
    if (!isChanged) return
    const timer = setTimeout(() => { if (document.activeElement === document.body) guide.current?.focus({ preventScroll: true }) }, SETTLED_MS)
    return () => { clearTimeout(timer) }
  }, [guide, missingCount, isFresh])
}
