'use client'

import Link from 'next/link'
import { bookHref } from '../_links/book-href'
import { exerciseOfPlanHref } from '../_links/exercise-href'
import { logOfPlanHref } from '../_links/log-href'
import type { PartName } from '../_links/part-href'
import { say } from '../_text'
import { Card } from '../_ui/card'
import { Step } from '../_ui/step'
import steps from '../_ui/steps.module.css'
import { itemHref, screenHref } from '../_links/screens'
import { missingNeeds, missingNext } from './first-needs'
import { ownNeeds, openNeeds, unitToEnter, type OwnNeed } from './own-needs'
import { focusPart } from './part-focus'
import styles from './own-steps.module.css'
import { usePlanBoard } from './plan-context'
import { planPageHref } from '../_links/plan-pages'

/** Needs that a card of this screen answers. */
const partOfNeed: Partial<Record<OwnNeed, 'dump'>> = { dump: 'dump' }

/** What comes after the first answer: what makes it a plan to rely on, ticked off, then how to try it. Gone once all is done. */
export function OwnSteps({ onPart }: { onPart: (part: PartName) => void }) {
  const { district, plan, result } = usePlanBoard()
  if (!result || missingNeeds(district, plan).length > 0) return null
  const open = openNeeds(district, plan)
  if (open.length === 0) return null
  /** Where it is done, by the name that stands there. */
  const placeOf = (need: OwnNeed): { readonly href: string; readonly name: string } => {
    const bankId = plan.fillSites.find(({ draftSiteId }) => draftSiteId !== undefined)?.draftSiteId
    const bank = district.draftSites.find(({ id }) => id === bankId)
    if (need === 'lift' && bank) return { href: itemHref('survey', district.id, bank.id), name: bank.name }
    const unit = unitToEnter(district, plan)
    if (need === 'vehicles' && unit) return { href: itemHref('resources', district.id, unit.id), name: unit.name }
    return { href: screenHref('survey', district.id), name: say('shell.survey') }
  }
  const ways = [
    ['doubt', planPageHref('doubt', district.id, plan.id), say('plan.page.doubt')],
    ['advice', planPageHref('advice', district.id, plan.id), say('plan.page.advice')],
    ['print', bookHref(district.id, { planId: plan.id }), say('plan.print')],
    ['exercise', exerciseOfPlanHref(district.id, plan.id), say('plan.page.exercise')],
    ['log', logOfPlanHref(district.id, plan.id), say('plan.page.log')],
  ] as const
  return (
    <Card level={2} onPaper="never" title={say('plan.own.title')} summary={say('plan.own.summary', { done: ownNeeds.length - open.length, all: ownNeeds.length })} startsOpen={missingNext(district, plan).length === 0 && open.length * 2 > ownNeeds.length}>
      <ol className={steps.steps}>
        {ownNeeds.map((need) => {
          const isThere = !open.includes(need)
          const part = partOfNeed[need]
          const words = say(`plan.own.${need}`)
          const { href, name } = part ? { href: '', name: say(`plan.card.${part}`) } : placeOf(need)
          const go = { className: steps.go, 'aria-label': say('plan.own.go', { name, why: words }) }
          return (
            <Step key={need} isDone={isThere} state={isThere ? say('plan.first.there') : undefined}>
              {words}{' '}
              {!isThere && (part ? <button type="button" {...go} onClick={() => { onPart(part); focusPart(part) }}>{name}</button> : <Link {...go} href={href}>{name}</Link>)}
            </Step>
          )
        })}
      </ol>
      <h3 className={styles.then}>{say('plan.own.then')}</h3>
      <ul className={styles.ways}>
        {ways.map(([key, href, name]) => <li key={key}><Link className={steps.go} href={href} aria-label={say('plan.own.way', { name, why: say(`plan.own.${key}`) })}>{name}</Link> <span className={steps.state} aria-hidden="true">{say(`plan.own.${key}`)}</span></li>)}
      </ul>
    </Card>
  )
}
