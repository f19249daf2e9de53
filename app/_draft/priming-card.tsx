'use client'

import { useState } from 'react'
import { faultsFor, vacuumFaults, type PrimeTime, type VacuumReading } from '@/lib/priming'
import type { Pumper } from '@/lib/plan'
import { primingOf, type DraftSheet } from '@/lib/supply'
import { inchesOfMercuryFromFeetOfWater } from '@/lib/units'
import { backUpCardHref, drillHref, type DraftLinkTarget } from '../_links/draft-href'
import { formatQuantity, inUnits, say, type NameOf } from '../_text'
import '../_text/areas/draft'
import { ButtonLink } from '../_ui/button-link'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { FigureGroup, type FigureEntry } from '../_ui/figure-group'
import { IssueList } from '../_ui/issue-list'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'

const readings: readonly VacuumReading[] = ['none', 'low-and-steady', 'builds-then-falls', 'above-lift-no-water', 'right-but-pressure-swings']

/** How long the installed primer needs here, what to look for when no vacuum builds, and the ways on. */
export function PrimingCard({ sheet, pump, names, here }: { sheet: DraftSheet; pump: Pumper; names: NameOf; here: DraftLinkTarget }) {
  const [system] = useUnitSystem()
  const { time, primerFrom, getWorking } = primingOf(sheet, pump)
  const isLate = time.expected_s !== undefined && time.expected_s > time.limit_s
  const figures: FigureEntry[] = [
    { id: 'time', label: say('draft.prime.time'), value: timeText(time), look: time.expected_s === undefined ? 'danger' : isLate ? 'amber' : 'plain', note: say(`draft.prime.from.${primerFrom}`), mark: primerFrom === 'measured-time' ? 'computed' : primerFrom === 'primer' ? 'computed' : 'assumed', getWorking },
    { id: 'limit', label: say('draft.prime.limit'), value: formatQuantity(time.limit_s, 's', system), note: inUnits(say(time.allowance_s > 0 ? 'draft.prime.limit.more' : 'draft.prime.limit.note'), system) },
    { id: 'air', label: say('draft.prime.air'), value: formatQuantity(time.air_gal, 'gal', system) },
    { id: 'vacuum', label: say('draft.prime.vacuum'), value: formatQuantity(inchesOfMercuryFromFeetOfWater(time.vacuum_ft), 'inHg', system) },
  ]
  return (
    <Card title={say('draft.prime')} summary={time.expected_s === undefined ? say('draft.prime.summary.never') : say(isLate ? 'draft.prime.summary.late' : 'draft.prime.summary', { time: timeText(time), limit: formatQuantity(time.limit_s, 's', system) })} startsOpen>
      <FigureGroup label={say('draft.prime')} figures={figures} names={names} />
      {time.issues.length > 0 && <IssueList issues={time.issues} names={names} label={say('draft.prime')} />}
      {pump.priming_s !== undefined && <p className={styles.quiet}>{say('draft.prime.tested', { time: formatQuantity(pump.priming_s, 's', system) })}</p>}
      <div className={styles.actions}>
        <ButtonLink href={backUpCardHref(here)} label={say('draft.card.open')} icon="print" />
        <ButtonLink href={drillHref(here)} label={say('draft.drill')} icon="drill" />
      </div>
      <Faults />
    </Card>
  )

  function timeText({ expected_s }: PrimeTime): string {
    return expected_s === undefined ? say('draft.prime.never') : formatQuantity(expected_s, 's', system)
  }
}

/** What to check when no vacuum builds, in order, narrowed down by what the gauge does. */
function Faults() {
  const [system] = useUnitSystem()
  const [reading, setReading] = useState<VacuumReading>()
  const [shut, setShut] = useState<'untried' | 'builds' | 'none'>('untried')
  const faults = reading === undefined ? vacuumFaults : faultsFor(reading, shut === 'untried' ? undefined : shut === 'builds')
  return (
    <section>
      <h4 className={styles.subtitle}>{say('draft.faults')}</h4>
      <div className={styles.narrow}>
        <ChoiceField label={say('draft.faults.reading')} none={say('draft.faults.any')} value={reading} choices={readings.map((value) => ({ value, label: say(`draft.reading.${value}`) }))} onCommit={setReading} />
        {reading !== undefined && <Segments label={say('draft.faults.shut')} value={shut} onCommit={setShut} choices={(['untried', 'builds', 'none'] as const).map((value) => ({ value, label: say(`draft.faults.shut.${value}`) }))} />}
      </div>
      <ol className={styles.faults}>
        {faults.map(({ code, test }) => <li key={code}><span className={styles.fault}>{say(`draft.fault.${code}`)}</span> <span className={styles.quiet}>{inUnits(say(`draft.test.${test}`), system)}</span></li>)}
      </ol>
      {faults.length === 0 && <p className={styles.quiet}>{say('draft.faults.nothing')}</p>}
    </section>
  )
}
