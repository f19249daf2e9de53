'use client'

import Link from 'next/link'
import { useEffect, useRef } from 'react'
import { bookHref } from '../_links/book-href'
import { say } from '../_text'
import { exerciseOfPlanHref } from '../_links/exercise-href'
import { logOfPlanHref } from '../_links/log-href'
import { planPageHref, planPages, type PlanPage } from '../_links/plan-pages'
import { Icon } from '../_look/icon'
import { joinClasses } from '../_ui/join-classes'
import styles from './plan-nav.module.css'

/** Name of the plan, and the ways to look at it. */
export function PlanNav({ districtId, planId, name, page }: { districtId: string; planId: string; name: string; page: PlanPage }) {
  const pages = useRef<HTMLUListElement>(null)
  // On a phone the page one is on may lie beyond the edge.
  useEffect(() => {
    const list = pages.current, current = list?.querySelector<HTMLElement>('[aria-current="page"]')
    if (list && current) list.scrollLeft = Math.max(0, current.offsetLeft - (list.clientWidth - current.offsetWidth) / 2)
  }, [page])
  return (
    <nav className={styles.nav} aria-label={say('plan.pages')}>
      <h1 className={styles.name} title={name}>{name}</h1>
      <ul ref={pages} className={styles.pages}>
        {planPages.map((one) => (
          <li key={one}><Link href={planPageHref(one, districtId, planId)} className={styles.page} aria-current={one === page ? 'page' : undefined}>{say(`plan.page.${one}`)}</Link></li>
        ))}
        <li><Link href={exerciseOfPlanHref(districtId, planId)} className={styles.page}>{say('plan.page.exercise')}</Link></li>
        <li><Link href={logOfPlanHref(districtId, planId)} className={styles.page}>{say('plan.page.log')}</Link></li>
        <li><Link href={bookHref(districtId, { planId })} className={joinClasses(styles.page, styles.print)}><Icon name="print" />{say('plan.print')}</Link></li>
      </ul>
    </nav>
  )
}
