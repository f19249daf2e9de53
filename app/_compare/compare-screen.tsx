'use client'

import { useRouter } from 'next/navigation'
import { useMemo } from 'react'
import { namesOf, type District, type Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { useDistrict, useDocumentList, usePlan, type DocumentEntry } from '../_client'
import { Shell } from '../_frame/shell'
import { compareHref, MOST_PLANS, planIdsFrom } from '../_links/compare-href'
import { say, type NameOf } from '../_text'
import '../_text/areas/compare'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { EmptyState } from '../_ui/empty-state'
import { useAddress } from '../_ui/use-address'
import shared from '../_look/shared.module.css'
import styles from './compare.module.css'
import { screenHref } from '../_links/screens'
import type { CompareColumn } from './compare-column'
import { CompareCharts } from './compare-charts'
import { DifferenceTable } from './difference-table'
import { FigureTable } from './figure-table'
import { useCompared } from './use-compared'

/** Plans of a district side by side: figures, strips, charts, and what differs. */
export function CompareScreen({ districtId }: { districtId: string }) {
  const { plans: chosen } = useAddress('plans')
  const planIds = useMemo(() => planIdsFrom(chosen), [chosen])
  const district = useDistrict(districtId).doc
  const list = useDocumentList()
  const entries = list.entries.filter((entry) => entry.kind === 'plan' && entry.districtId === districtId)
  const plans = usePlans(planIds, districtId)
  const compared = useCompared(district, plans)
  const columns = useMemo(() => (district ? plans.map((plan): CompareColumn => ({ plan, names: nameOf(district, plan), compared: compared.get(plan.id) })) : []), [district, plans, compared])
  const isWaiting = columns.some((column) => !column.compared) || (plans.length < planIds.length && list.status === 'loading')
  const isDoubting = columns.some(({ compared }) => compared?.isDoubting)
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="plan">
      <div className={styles.page} aria-busy={isWaiting || isDoubting}>
        <header className={styles.head}>
          <div>
            <h1 className={styles.title}>{say('compare.title')}</h1>
            <p className={styles.quiet}>{say('compare.hint')}</p>
          </div>
          <ButtonLink href={screenHref('plan', districtId)} label={say('compare.back')} icon="arrowLeft" size="s" className={shared.screenOnly} />
        </header>
        <Chooser districtId={districtId} entries={entries} planIds={planIds} />
        <p className={styles.status} role="status">{plans.length === 0 ? '' : isWaiting ? say('compare.loading') : isDoubting ? say('compare.doubting') : ''}</p>
        {plans.length < 2
          ? <EmptyState title={say('compare.few')} text={say('compare.few.text')} />
          : (
            <>
              <FigureTable columns={columns} />
              <CompareCharts columns={columns} />
              <DifferenceTable columns={columns} />
            </>
          )}
        <Caution kinds={['planning-aid']} />
      </div>
    </Shell>
  )
}

/** Which plans are compared; the address says so too. */
function Chooser({ districtId, entries, planIds }: { districtId: string; entries: readonly DocumentEntry[]; planIds: readonly string[] }) {
  const router = useRouter()
  const isFull = planIds.length >= MOST_PLANS
  const toggle = (id: string) => {
    const next = planIds.includes(id) ? planIds.filter((one) => one !== id) : [...planIds, id]
    router.replace(compareHref(districtId, next), { scroll: false })
  }
  return (
    <fieldset className={styles.chooser}>
      <legend>{say('compare.choose')}</legend>
      {entries.map(({ id, name }) => {
        const isChosen = planIds.includes(id)
        return (
          <label key={id} className={styles.choice}>
            <input type="checkbox" checked={isChosen} disabled={!isChosen && isFull} onChange={() => { toggle(id) }} />
            <span>{name}</span>
          </label>
        )
      })}
      <p className={styles.quiet}>{say(isFull ? 'compare.most' : 'compare.choose.hint')}</p>
    </fieldset>
  )
}

/** The plans that have come, in the order asked for; the same array until one changes. */
function usePlans([a, b, c, d]: readonly string[], districtId: string): readonly Plan[] {
  const first = usePlan(a).doc
  const second = usePlan(b).doc
  const third = usePlan(c).doc
  const fourth = usePlan(d).doc
  return useMemo(() => [first, second, third, fourth].filter((plan) => plan?.districtId === districtId).flatMap((plan) => plan ?? []), [first, second, third, fourth, districtId])
}

function nameOf(district: District, plan: Plan): NameOf {
  const names = namesOf({ district, plan })
  const fire = district.hazards.find(({ id }) => id === plan.hazardId)?.name ?? say('plan.fire-ground')
  return (id) => names.get(id) ?? (id === FIRE_GROUND ? fire : undefined)
}
