import Link from 'next/link'
import { bookHref } from '../_links/book-href'
import { exchangeHref } from '../_links/exchange-href'
import { screenHref } from '../_links/screens'
import { Icon } from '../_look/icon'
import { formatDay, say } from '../_text'
import '../_text/areas/home'
import { ButtonLink } from '../_ui/button-link'
import styles from './home.module.css'
import type { HomeDistrict } from './home-districts'
import { PutAwayDistrict } from './put-away-district'
import { SaveArchive } from './save-archive'

/** Districts with their plans, each a way in. */
export function DistrictList({ districts, isStation }: { districts: readonly HomeDistrict[]; isStation: boolean }) {
  return (
    <ul className={styles.districts}>
      {districts.map(({ id, name, updatedAt, plans }) => (
        <li key={id} className={styles.district}>
          <div className={styles.districtHead}>
            <h3 className={styles.districtName}><Link href={screenHref('survey', id)}>{name}</Link></h3>
            {updatedAt && <p className={styles.quiet}>{say('home.changed', { day: formatDay(updatedAt) })}</p>}
          </div>
          {plans.length === 0
            ? <p className={styles.quiet}>{say('home.no-plans')}</p>
            : (
              <ul className={styles.plans}>
                {plans.map((plan) => (
                  <li key={plan.id}>
                    <Link className={styles.plan} href={screenHref('plan', id, plan.id)}>
                      <Icon name="plan" />
                      <span className={styles.planName}>{plan.name}</span>
                      {plan.updatedAt && <span className={styles.quiet}>{formatDay(plan.updatedAt)}</span>}
                    </Link>
                  </li>
                ))}
              </ul>
            )}
          <div className={styles.ways}>
            <ButtonLink size="s" icon="survey" label={say('shell.survey')} href={screenHref('survey', id)} />
            <ButtonLink size="s" icon="resources" label={say('shell.resources')} href={screenHref('resources', id)} />
            <ButtonLink size="s" icon="plan" label={say('home.plans', { count: plans.length })} href={screenHref('plan', id)} />
            <ButtonLink size="s" icon="exercise" label={say('shell.exercise')} href={screenHref('exercise', id)} />
            <ButtonLink size="s" icon="log" label={say('shell.log')} href={screenHref('log', id)} />
            <ButtonLink size="s" icon="drill" label={say('shell.drill')} href={screenHref('drill', id)} />
            <ButtonLink size="s" icon="print" label={say('shell.book')} href={bookHref(id)} />
            <ButtonLink size="s" icon="move" label={say('home.exchange')} href={exchangeHref(id)} />
            {isStation && <SaveArchive id={id} name={name} />}
            {isStation && <PutAwayDistrict id={id} name={name} />}
          </div>
        </li>
      ))}
    </ul>
  )
}
