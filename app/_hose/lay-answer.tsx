'use client'

import type { Lay } from '@/lib/plan'
import { crossingsOf, isHoseLacking, type HoseLayAnswer, type HoseNeed, type LaidStretch } from '@/lib/supply'
import type { RelayGain, RelayStep } from '@/lib/relay'
import { usePlanBoard } from '../_plan/plan-context'
import { formatAsked, formatGiven, formatMinutes, formatNumber, formatQuantity, formatTime, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/hose'
import { DataTable } from '../_ui/data-table'
import { FigureTile } from '../_ui/figure-tile'
import { IssueList } from '../_ui/issue-list'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'
import { LayInPlan } from './lay-in-plan'
import type { HoseStudy } from './hose.worker'
import { LayPlots } from './lay-plots'
import { PumperTable } from './pumper-table'
import { StopTable } from './stop-table'

/** What one lay carries and what it takes: figures, cautions, plots, tables and the orders of work. */
export function LayAnswer({ study: { answer, terrainFailure }, lay }: { study: HoseStudy; lay: Lay }) {
  const { names } = usePlanBoard()
  const [system] = useUnitSystem()
  return (
    <>
      <Figures answer={answer} lay={lay} system={system} />
      <LayInPlan lay={lay} />
      <section className={styles.sheet} aria-label={say('hose.issues')}>
        <h3 className={styles.subtitle}>{say('hose.issues')}</h3>
        {terrainFailure && <p role="alert">{say('hose.terrain-failed', { why: terrainFailure })}</p>}
        {answer.issues.length > 0 ? <IssueList issues={answer.issues} names={names} label={say('hose.issues')} /> : <p className={styles.quiet}>{say('hose.issues.none')}</p>}
      </section>
      <LayPlots answer={answer} names={names} />
      {answer.pumpers.length > 0 && (
        <>
          <PumperTable answer={answer} names={names} />
          <StopTable stops={answer.stops} names={names} />
          <div className={styles.pair}>
            <Steps title={say('hose.start')} steps={answer.start} names={names} system={system} />
            <Steps title={say('hose.stop')} steps={answer.stop} names={names} system={system} />
          </div>
        </>
      )}
      {answer.hose.length > 0 && <HoseTable answer={answer} lay={lay} system={system} />}
      <div className={styles.pair}>
        {answer.time && <TimeTable time={answer.time} system={system} />}
        {answer.pumpers.length > 0 && <Gains gains={answer.gains} names={names} system={system} />}
      </div>
    </>
  )
}

function Figures({ answer, lay, system }: { answer: HoseLayAnswer; lay: Lay; system: UnitSystem }) {
  const { flow_gpm, most_gpm, hose_ft, time, doubted } = answer
  const down = (value: number) => formatGiven(value, system)
  const feet = (value: number) => formatQuantity(value, 'ft', system)
  if (flow_gpm === undefined || most_gpm === undefined) return null
  const isShort = lay.wanted_gpm !== undefined && flow_gpm < lay.wanted_gpm * 0.999
  const isLacking = answer.issues.some(isHoseLacking)
  const note = isLacking ? say('hose.flow.lacking') : lay.wanted_gpm === undefined ? say('hose.flow.most') : isShort ? say('hose.flow.short', { wanted: formatAsked(lay.wanted_gpm, system) }) : say('hose.flow.wanted', { most: down(most_gpm) })
  const doubt = doubted && flow_gpm > 0 ? say('hose.flow.doubted', { most: down(doubted.most_gpm), more: feet(doubted.more_ft) }) : undefined
  return (
    <section className={styles.tiles} aria-label={say('hose.answer')}>
      <FigureTile label={say('hose.flow')} value={flow_gpm > 0 ? down(flow_gpm) : say('hose.flow.none')} look={flow_gpm > 0 && !isShort && !isLacking ? 'water' : 'amber'} note={[note, doubt].filter(Boolean).join('; ')} />
      {hose_ft !== undefined && <FigureTile label={say('hose.hose')} value={feet(hose_ft)} note={say('hose.hose.way', { way: feet(answer.way_ft) })} />}
      <FigureTile label={say('hose.rise')} value={answer.heights === 'none' ? say('quantity.unknown') : feet(answer.rise_ft)} note={say(`hose.rise.${answer.heights}`)} {...(answer.heights === 'none' && { look: 'amber' as const })} />
      {time && <FigureTile label={say('hose.ready')} value={formatMinutes(time.ready_s, 'up')} note={say('hose.ready.note')} />}
    </section>
  )
}

function Steps({ title, steps, names, system }: { title: string; steps: readonly RelayStep[]; names: NameOf; system: UnitSystem }) {
  return (
    <section className={styles.sheet} aria-label={title}>
      <h3 className={styles.subtitle}>{title}</h3>
      <ol className={styles.steps}>
        {steps.map(({ code, pumperId, psi, gpm }, index) => (
          <li key={index}>
            {say(`hose.step.${code}`, {
              pumper: (pumperId && names(pumperId)) ?? say('issue.unnamed'), pressure: psi === undefined ? say('quantity.unknown') : formatQuantity(psi, 'psi', system),
              flow: gpm === undefined ? say('quantity.unknown') : formatQuantity(gpm, 'gpm', system, { style: 'headline', toward: 'down' }),
            })}
          </li>
        ))}
      </ol>
    </section>
  )
}

function HoseTable({ answer, lay, system }: { answer: HoseLayAnswer; lay: Lay; system: UnitSystem }) {
  const { bridgeCount, rampCount } = crossingsOf(lay)
  const feet = (value: number) => formatQuantity(value, 'ft', system)
  const isShared = answer.hose.some(({ taken_ft }) => taken_ft > 0)
  return (
    <div className={styles.sheet}>
      <DataTable
        caption={say('hose.hose.table')} rows={answer.hose} rowKey={({ size_in }) => String(size_in)}
        columns={[
          { key: 'size', head: say('hose.column.size'), cell: ({ size_in }) => formatQuantity(size_in, 'in', system) },
          { key: 'needed', head: say('hose.column.needed'), isNumber: true, cell: ({ needed_ft }) => feet(needed_ft) },
          { key: 'carried', head: say('hose.column.carried'), isNumber: true, cell: ({ carried_ft }) => feet(carried_ft) },
          { key: 'district', head: say('hose.column.district'), isNumber: true, cell: ({ district_ft }) => feet(district_ft) },
          ...(isShared ? [{ key: 'taken', head: say('hose.column.taken'), isNumber: true, cell: ({ taken_ft }: HoseNeed) => feet(taken_ft) }] : []),
        ]}
      />
      <p className={styles.quiet}>{say('hose.hose.note', { list: answer.stretches.map((one) => stretchWords(one, system)).join('; ') })}</p>
      {lay.crossings && lay.crossings.length > 0 && <p className={styles.quiet}>{say('hose.crossing.needs', { bridges: bridgeCount, ramps: rampCount })}</p>}
    </div>
  )
}

const stretchWords = ({ length_ft, lineCount, size_in, coefficient, coefficientFrom, working_psi, workingFrom }: LaidStretch, system: UnitSystem): string => say('hose.hose.stretch', {
  length: formatQuantity(length_ft, 'ft', system), lines: lineCount, size: formatQuantity(size_in, 'in', system), coefficient: formatNumber(coefficient, 3),
  source: say(`hose.of.${coefficientFrom}`), working: formatQuantity(working_psi, 'psi', system), workingSource: say(`hose.of.${workingFrom}`),
})

function TimeTable({ time, system }: { time: NonNullable<HoseLayAnswer['time']>; system: UnitSystem }) {
  const rows = [
    { part: say('hose.time.lay'), takes_s: time.lay_s }, { part: say('hose.time.hookUp'), takes_s: time.hookUp_s }, { part: say('hose.time.source'), takes_s: time.sourceReady_s },
    { part: say('hose.time.fill', { volume: formatQuantity(time.hose_gal, 'gal', system) }), takes_s: time.fill_s }, { part: say('hose.time.throttle'), takes_s: time.throttle_s },
    { part: say('hose.ready'), takes_s: time.ready_s },
  ]
  return (
    <div className={styles.sheet}>
      <DataTable
        caption={say('hose.time')} rows={rows} rowKey={({ part }) => part}
        columns={[{ key: 'part', head: say('hose.time.part'), cell: ({ part }) => part }, { key: 'takes', head: say('hose.time.takes'), isNumber: true, cell: ({ takes_s }) => formatTime(takes_s) }]}
      />
      <p className={styles.quiet}>{say('hose.ready.note')}</p>
    </div>
  )
}

function Gains({ gains, names, system }: { gains: readonly RelayGain[]; names: NameOf; system: UnitSystem }) {
  return (
    <section className={styles.sheet} aria-label={say('hose.gains')}>
      <h3 className={styles.subtitle}>{say('hose.gains')}</h3>
      {gains.length === 0 && <p className={styles.quiet}>{say('hose.gains.none')}</p>}
      <ul className={styles.gains}>
        {gains.map(({ link, id, gain_gpm }) => (
          <li key={`${link} ${id ?? ''}`}>
            <span>{link === 'pumper' ? say('hose.gain.pumper', { name: (id && names(id)) ?? say('issue.unnamed') }) : say(`hose.gain.${link}`)}</span>
            <span className={styles.number}>{say('hose.gain.plus', { gain: formatQuantity(gain_gpm, 'gpm', system, { style: 'headline', toward: 'down' }) })}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
