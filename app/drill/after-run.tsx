'use client'

import { useEffect, useMemo, useRef, useState } from 'react'
import { movementsOf, scoreDrill, type Drill, type DrillScore, type Finding } from '@/lib/priming/drill'
import { formatClock, formatNumber, formatQuantity, formatTime, say, type UnitSystem } from '../_text'
import '../_text/areas/drill'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { DataTable } from '../_ui/data-table'
import { saveFile } from '../_ui/save-file'
import { TextField } from '../_ui/text-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './drill.module.css'
import { FindingItem, positionWords } from './finding-item'
import { ModelNotes } from './model-notes'
import { RunCharts } from './run-charts'
import { csvOf } from './run-csv'
import { workOutFindings } from './work-out-findings'

export type AfterRunProps = {
  drill: Drill
  /** Keeps the run under a name; says whether the device did. Absent for a run that is kept already. */
  onKeep?: (name: string, points: number) => boolean
  /** Address that takes back how it went: primed after that time, or not. */
  backTo?: (primed_s: number | undefined) => string
  onAgain: () => void
  onOther: () => void
}

/** After a run: how it ended, what happened and why, the gauges over time, what the model assumes. */
export function AfterRun({ drill, onKeep, backTo, onAgain, onOther }: AfterRunProps) {
  const [system] = useUnitSystem()
  const [findings, setFindings] = useState<readonly Finding[]>()
  const [kept, setKept] = useState<boolean>()
  const heading = useRef<HTMLHeadingElement>(null)
  const score = useMemo(() => scoreDrill(drill), [drill])
  const movements = useMemo(() => movementsOf(drill.scenario.controls, drill.moves).map((movement, index) => ({ ...movement, index })), [drill])

  useEffect(() => {
    let isWanted = true
    heading.current?.focus()
    workOutFindings(drill, () => isWanted).then((found) => { if (isWanted) setFindings(found) }, (error: unknown) => { reportError(error) })
    return () => { isWanted = false }
  }, [drill])

  return (
    <div className={styles.after}>
      <header className={styles.outcome} data-met={score.isGoalMet}>
        <h2 ref={heading} tabIndex={-1}>{outcomeWords(drill, score, system)}</h2>
        <p>{say('drill.after.was', { scenario: say(`drill.scenario.${drill.scenario.code}`) })}</p>
        <p className={styles.points}>{say('drill.score', { points: score.points })}</p>
        <p className={styles.quiet}>
          {say('drill.score.parts', { prompt: formatNumber(score.parts.promptPoints), water: formatNumber(score.parts.thriftPoints), moves: formatNumber(score.parts.movePoints), order: formatNumber(score.parts.orderPoints) })}
        </p>
        <div className={styles.actions}>
          {backTo && <ButtonLink look="primary" href={backTo(hasPrime(drill, score) ? score.time_s : undefined)} label={say('drill.back-to-exercise')} className={styles.big} />}
          <Button look="primary" label={say('drill.again')} onClick={onAgain} className={styles.big} />
          <Button label={say('drill.other')} onClick={onOther} className={styles.big} />
          <Button label={say('drill.export')} onClick={() => { saveFile(say('drill.export.file', { scenario: drill.scenario.code }), csvOf(drill), 'text/csv;charset=utf-8') }} className={styles.big} />
        </div>
      </header>

      <section className={styles.findings} aria-busy={findings === undefined}>
        <h3>{say('drill.findings')}</h3>
        {findings === undefined && <p role="status">{say('drill.findings.working')}</p>}
        {findings?.length === 0 && <p>{say('drill.findings.none')}</p>}
        {findings && findings.length > 0 && <ol className={styles.list}>{findings.map((finding) => <FindingItem key={`${finding.event.code}${finding.event.at_s}`} finding={finding} system={system} />)}</ol>}
      </section>

      <section className={styles.graphs}>
        <h3>{say('drill.charts')}</h3>
        <p className={styles.quiet}>{say('drill.charts.moves')}</p>
        <RunCharts drill={drill} />
      </section>

      <section className={styles.rest}>
        <DataTable
          caption={say('drill.moves')}
          rows={movements}
          rowKey={({ index }) => String(index)}
          empty={say('drill.moves.none')}
          columns={[
            { key: 'number', head: say('drill.move.number'), cell: ({ index }) => index + 1 },
            { key: 'time', head: say('drill.move.time'), isNumber: true, cell: ({ start_s }) => formatClock(start_s) },
            { key: 'control', head: say('drill.move.control'), cell: ({ control }) => say(`drill.control.${control}`) },
            { key: 'from', head: say('drill.move.from'), isNumber: true, cell: ({ control, from }) => positionWords(control, from) },
            { key: 'to', head: say('drill.move.to'), isNumber: true, cell: ({ control, to }) => positionWords(control, to) },
          ]}
        />
        {onKeep && (
          <div className={styles.keep}>
            <TextField label={say('drill.keep.name')} hint={say('drill.keep.hint')} value={undefined} maxLength={80} isDisabled={kept === true} onCommit={(name) => { if (name) setKept(onKeep(name, score.points)) }} />
            <p role="status">{kept === undefined ? '' : kept ? say('drill.keep.done') : say('drill.keep.failed')}</p>
          </div>
        )}
        <ModelNotes />
        <Caution kinds={['back-up-prime', 'planning-aid', 'banks', 'pressure']} />
      </section>
    </div>
  )
}

/** The pumper holds a draft: the goal of every scenario but the one that must be given up. */
const hasPrime = (drill: Drill, score: DrillScore): boolean => score.isGoalMet && drill.scenario.goal.kind !== 'give-up'

function outcomeWords(drill: Drill, score: DrillScore, system: UnitSystem): string {
  const has = (code: string): boolean => drill.events.some((event) => event.code === code)
  const facts = { time: formatTime(score.time_s), water: formatQuantity(score.water_gal, 'gal', system), moves: score.moveCount }
  if (has('goal-met')) return say('drill.after.goal-met', facts)
  if (has('gave-up')) {
    if (drill.scenario.goal.kind !== 'give-up') return say('drill.after.wrong-stop')
    return score.isGoalMet ? say('drill.after.right-stop', facts) : say('drill.after.late-stop', facts)
  }
  return say(has('time-up') ? 'drill.after.time-up' : 'drill.after.ended')
}
