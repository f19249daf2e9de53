'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import type { Bundle, FieldLog } from '@/lib/plan'
import { getClient, type DocumentEntry } from '../_client'
import { logHref } from '../_links/log-href'
import { usePlanDesk } from '../_plan/use-plan-desk'
import { formatDay, say } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { useTellRefused } from '../_ui/use-tell-refused'
import { dayAt } from './clock-time'
import styles from './log.module.css'

const NONE = 'none'

/** Begins a log: of a plan as it stands now, or of none. */
export function NewLog({ districtId, plans, planId }: { districtId: string; plans: readonly DocumentEntry[]; planId: string | undefined }) {
  const [picked, setPicked] = useState<string | undefined>(planId)
  const chosen = picked ?? plans[0]?.id ?? NONE
  const begin = useBegin(districtId)
  return (
    <section className={styles.part} aria-labelledby="log-new">
      <h2 id="log-new" className={styles.heading}>{say('log.new')}</h2>
      <ChoiceField label={say('log.plan')} value={chosen} choices={[...plans.map(({ id, name }) => ({ value: id, label: name })), { value: NONE, label: say('log.plan.none') }]} onCommit={setPicked} />
      {chosen === NONE && <p className={styles.quiet}>{say('log.plan.none.text')}</p>}
      {chosen === NONE ? <div><Button look="primary" label={say('log.begin')} onClick={() => { void begin() }} /></div> : <OfPlan key={chosen} districtId={districtId} planId={chosen} begin={begin} />}
    </section>
  )
}

function OfPlan({ districtId, planId, begin }: { districtId: string; planId: string; begin: (planned?: Bundle) => Promise<void> }) {
  const { bundle, answer } = usePlanDesk(districtId, planId)
  // The log keeps the ways as they were found, so that trips can be told without the roads.
  const whole = bundle && answer.result ? { ...bundle, legs: [...answer.legs] } : undefined
  if (whole) return <div><Button look="primary" label={say('log.begin')} onClick={() => { void begin(whole) }} /></div>
  return (
    <div className={styles.form}>
      <p role="status" className={styles.quiet}>{say('log.begin.waiting')}</p>
      <Button label={say('log.begin.early')} disabled={!bundle} onClick={() => { if (bundle) void begin(bundle) }} />
    </div>
  )
}

function useBegin(districtId: string): (planned?: Bundle) => Promise<void> {
  const router = useRouter()
  const tellRefused = useTellRefused()
  return async (planned) => {
    const client = getClient()
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
    const date = dayAt(Date.now(), timeZone)
    const day = formatDay(date)
    const { demand, criterion } = planned?.plan ?? {}
    const needed_gpm = demand && demand.length > 0 ? Math.max(...demand.map(({ flow_gpm }) => flow_gpm)) : undefined
    const log: FieldLog = {
      format: 'millrace-log', version: 1, id: client.newId(), districtId, date, zone: timeZone, units: [],
      name: (planned ? say('log.name.of-plan', { plan: planned.plan.name, day }) : say('log.name.plain', { day })).slice(0, 120),
      places: planned ? [] : [{ id: client.newId(), name: say('log.fill-place'), kind: 'fill' }, { id: client.newId(), name: say('log.dump-place'), kind: 'dump' }],
      ...(planned && { planId: planned.plan.id, planned }), ...(criterion && { criterion }), ...(needed_gpm !== undefined && { needed_gpm }),
    }
    const refused = await client.create(log, { label: say('log.begin') })
    if (!tellRefused(refused)) router.push(logHref(districtId, log.id))
  }
}
