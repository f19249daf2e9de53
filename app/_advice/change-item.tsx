'use client'

import { useId, useState } from 'react'
import { gainPerEffort, isUnproven, noticeable_gpm, workOf_s, type Advice, type DependableGains, type Trial } from '@/lib/advise'
import type { Link } from '@/lib/supply'
import { formatGiven, formatMinutes, formatNumber, formatQuantity, formatSignedChange, linkText, say, sayIssue } from '../_text'
import '../_text/areas/advice'
import { Button } from '../_ui/button'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import { Icon } from '../_look/icon'
import type { PlanBoard } from '../_plan/plan-context'
import styles from './advice.module.css'
import { changeText, effortText } from './change-text'
import { changedNames } from './changed-names'
import { unprovenText } from './unproven-text'
import type { Apply } from './use-apply'

type Props = { trial: Trial; most_gpm: number; board: PlanBoard; advice: Pick<Advice, 'limit' | 'limits'>; dependable: DependableGains | undefined; apply: Apply }

/** Shifts of the moment at which supply is ready that are worth a word. */
const NOTED_SHIFT_S = 60

/** One change: what it gains, what it asks for, its working, and the two ways to take it. */
export function ChangeItem({ trial, most_gpm, board, advice, dependable, apply }: Props) {
  const [system] = useUnitSystem()
  const [isOpen, setOpen] = useState(false)
  const panelId = useId()
  const { candidate, before, after, gain_gpm, effort, meetsNeed } = trial
  const change = changeText(candidate, board.names, system)
  const flow = (value: number) => formatGiven(value, system)
  const after_gpm = dependable?.after_gpm.get(candidate.id)
  const isNotDependable = dependable !== undefined && after_gpm !== undefined && after_gpm - dependable.base_gpm < noticeable_gpm(dependable.base_gpm)
  const shift_s = before.ready_s === null || after.ready_s === null ? 0 : after.ready_s - before.ready_s
  return (
    <li className={styles.item}>
      <h3 className={styles.change}>{change}</h3>
      <div className={styles.gain}>
        <span className={styles.track} aria-hidden="true"><span className={styles.bar} style={{ width: `${Math.max(2, (gain_gpm / most_gpm) * 100)}%` }} /></span>
        <strong className={styles.plus}>{say('advice.gain', { gain: formatSignedChange(before.flow_gpm, after.flow_gpm, system) })}</strong>
        <span className={styles.quiet}>{say('advice.from-to', { before: flow(before.flow_gpm), after: flow(after.flow_gpm) })}</span>
        {meetsNeed && <span className={styles.meets}><Icon name="check" size={14} />{say('advice.meets')}</span>}
      </div>
      {isUnproven(trial) && <p className={styles.note}>{unprovenText(trial, changedNames(board, candidate, board.names))}</p>}
      <p className={styles.quiet}>{effortText(effort)}</p>
      {Math.abs(shift_s) >= NOTED_SHIFT_S && <p className={styles.note}>{say(shift_s > 0 ? 'advice.ready-later' : 'advice.ready-earlier', { time: formatMinutes(Math.abs(shift_s)) })}</p>}
      {dependable && after_gpm !== undefined && <p className={styles.quiet}>{say('advice.dependable', { before: flow(dependable.base_gpm), after: flow(after_gpm), count: dependable.nightCount })}</p>}
      {isNotDependable && <p className={styles.note}>{say('advice.not-dependable')}</p>}
      <div className={styles.actions}>
        <Button size="s" label={say('advice.apply-variant')} aria-label={say('advice.apply-variant.of', { change })} onClick={() => { void apply.variant(candidate.edits, change) }} />
        <Button size="s" label={say('advice.apply-here')} aria-label={say('advice.apply-here.of', { change })} onClick={() => { apply.here(candidate.edits, change) }} />
        <Button size="s" look="quiet" iconAfter="chevron" label={say('advice.working-of')} aria-label={say('advice.working-of.change', { change })} aria-expanded={isOpen} aria-controls={panelId} onClick={() => { setOpen(!isOpen) }} />
      </div>
      <div id={panelId} hidden={!isOpen} className={styles.working}>{isOpen && <ChangeWorking trial={trial} board={board} advice={advice} />}</div>
    </li>
  )
}

/** How the gain came about, and what must be looked at before it is counted on. */
function ChangeWorking({ trial, board, advice }: Pick<Props, 'trial' | 'board' | 'advice'>) {
  const [system] = useUnitSystem()
  const { candidate, before, after, gain_gpm, effort, newIssues } = trial
  const names = changedNames(board, candidate, board.names)
  const limited = (link: Link | null | undefined, nameOf: typeof names) => (link ? linkText(link, nameOf) : say('advice.to-meet.nothing'))
  const flow = (value: number) => formatGiven(value, system)
  const time = (value: number | null) => (value === null ? say('quantity.unknown') : formatMinutes(value, 'up'))
  const rows = [
    { key: 'flow', name: say('advice.work.flow'), before: flow(before.flow_gpm), after: flow(after.flow_gpm) },
    { key: 'hauled', name: say('advice.work.hauled'), before: flow(before.hauled_gpm), after: flow(after.hauled_gpm) },
    { key: 'ready', name: say('advice.work.ready'), before: time(before.ready_s), after: time(after.ready_s) },
    { key: 'limited', name: say('advice.work.limited'), before: limited(advice.limit, board.names), after: limited(advice.limits.get(candidate.id), names) },
  ]
  const seen = new Set<string>()
  const checks = [
    ...candidate.provisos.map((proviso) => say(`advice.proviso.${proviso}`)),
    ...newIssues.map((one) => sayIssue(one, names, system)),
  ].filter((line) => (seen.has(line) ? false : seen.add(line)))
  return (
    <>
      <p className={styles.formula}>{say('advice.work.formula')}</p>
      <p className={styles.quiet}>
        {say('advice.work.rank', {
          gain: formatQuantity(gain_gpm, 'gpm', system, { style: 'working' }), people: Math.max(1, effort.peopleCount), minutes: formatNumber(workOf_s(effort) / 60 / Math.max(1, effort.peopleCount), 1), rank: formatQuantity(gainPerEffort(trial), 'gpm', system, { style: 'working' }),
        })}
      </p>
      <DataTable
        caption={say('advice.work.table', { change: changeText(candidate, board.names, system) })} isCaptionHidden rows={rows} rowKey={({ key }) => key}
        columns={[
          { key: 'name', head: say('advice.work.figure'), cell: ({ name }) => name },
          { key: 'before', head: say('advice.work.before'), cell: (row) => row.before },
          { key: 'after', head: say('advice.work.after'), cell: (row) => row.after },
        ]}
      />
      {checks.length > 0 && (
        <>
          <h4 className={styles.small}>{say('advice.check')}</h4>
          <ul className={styles.checks}>{checks.map((line) => <li key={line}>{line}</li>)}</ul>
        </>
      )}
    </>
  )
}
