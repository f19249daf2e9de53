'use client'

import Link from 'next/link'
import type { District } from '@/lib/plan'
import { useDocumentList } from '../_client'
import { say } from '../_text'
import { Button } from '../_ui/button'
import { Step } from '../_ui/step'
import styles from '../_ui/steps.module.css'
import { screenHref } from '../_links/screens'
import { useNewPlan } from './use-new-plan'

const steps = ['roads', 'water', 'hazard', 'vehicles'] as const

/** The way to a district's first plan, ticked off as it goes, with the plan itself at its end; gone once there is a plan. */
export function FirstSteps({ district, screen }: { district: District; screen: 'survey' | 'resources' }) {
  const list = useDocumentList()
  const begin = useNewPlan(district.id, 0)
  if (list.status !== 'ready' || list.entries.some(({ kind, districtId }) => kind === 'plan' && districtId === district.id)) return null
  const isDone: Readonly<Record<(typeof steps)[number], boolean>> = {
    roads: district.roads !== undefined,
    water: district.draftSites.length > 0,
    hazard: district.hazards.length > 0,
    vehicles: ['pumper', 'tender'].every((kind) => district.apparatus.some((unit) => unit.kind === kind)),
  }
  return (
    <section className={styles.panel} aria-labelledby="first-steps">
      <h2 id="first-steps" className={styles.title}>{say('plan.toward.title')}</h2>
      <ol className={styles.steps}>
        {steps.map((step) => {
          const at = step === 'vehicles' ? 'resources' : 'survey'
          const words = say(`plan.toward.${step}`)
          return (
            <Step key={step} isDone={isDone[step]} state={isDone[step] ? say('plan.first.there') : undefined}>
              {words}
              {!isDone[step] && at !== screen && <> <Link className={styles.go} href={screenHref(at, district.id)} aria-label={say('plan.own.go', { name: say(`shell.${at}`), why: words })}>{say(`shell.${at}`)}</Link></>}
            </Step>
          )
        })}
      </ol>
      <p className={styles.rest}>{say('plan.toward.rest')}</p>
      <div className={styles.acts}><Button look="primary" icon="plan" label={say('plan.toward.begin')} onClick={() => { void begin() }} /></div>
    </section>
  )
}
