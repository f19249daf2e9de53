import Link from 'next/link'
import { say } from '../_text'
import { planPageHref, planPages, type PlanPage } from './plan-pages'
import styles from './plan-nav.module.css'

/** Name of the plan, and the ways to look at it. */
export function PlanNav({ districtId, planId, name, page }: { districtId: string; planId: string; name: string; page: PlanPage }) {
  return (
    <nav className={styles.nav} aria-label={say('plan.pages')}>
      <h1 className={styles.name} title={name}>{name}</h1>
      <ul className={styles.pages}>
        {planPages.map((one) => (
          <li key={one}><Link href={planPageHref(one, districtId, planId)} className={styles.page} aria-current={one === page ? 'page' : undefined}>{say(`plan.page.${one}`)}</Link></li>
        ))}
      </ul>
    </nav>
  )
}
