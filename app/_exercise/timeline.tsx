'use client'

import { stepsWithin, type SessionRecord } from '@/lib/exercise'
import type { Fact } from '@/lib/plan'
import { minuteMarks } from '../_charts/chart-lines'
import { useWidth } from '../_charts/use-width'
import { formatMinutes, formatQuantity, say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './timeline.module.css'

const LEFT = 76
const RIGHT = 10
/** Marks of troubles and decisions stand in rows above, so that those close together are told apart. */
const ROWS = 3
const ROW = 18
const TOP = ROWS * ROW + 6
const FLOW = 120
const TANK = 44

type Step = SessionRecord['flow'][number]

/**
 * Time across: what was asked for and what came, the water in the tanks, and everything that came about, each under its mark.
 *
 * @param counted_s from which moment on anybody could be short
 */
export function Timeline({ record, facts, codes, end_s, counted_s, names }: { counted_s: number; record: SessionRecord; facts: readonly Fact[]; codes: ReadonlyMap<string, string>; end_s: number; names: NameOf }) {
  const [holder, width] = useWidth()
  const [system] = useUnitSystem()
  const plot = Math.max(50, width - LEFT - RIGHT)
  const x = (time_s: number) => LEFT + (Math.min(time_s, end_s) / end_s) * plot
  const most_gpm = Math.max(1, ...[...record.asked, ...record.flow].map(({ flow_gpm }) => flow_gpm))
  const y = (flow_gpm: number) => TOP + FLOW * (1 - flow_gpm / most_gpm)
  const base = TOP + FLOW
  const line = (steps: readonly Step[]) => steps.map(({ from_s, flow_gpm }, k) => `${k === 0 ? 'M' : 'H'}${x(from_s).toFixed(1)}${k === 0 ? ' ' : 'V'}${y(flow_gpm).toFixed(1)}`).join('') + `H${x(end_s).toFixed(1)}`
  const tankTop = (index: number) => base + 34 + index * (TANK + 22)
  const rowOf = (k: number) => 14 + (k % ROWS) * ROW
  const height = base + 22 + record.levels.length * (TANK + 22) + 4
  return (
    <figure className={styles.chart} ref={holder} aria-label={say('exercise.timeline')}>
      <svg className={styles.picture} width={Math.max(width, 1)} height={height} viewBox={`0 0 ${Math.max(width, 1)} ${height}`} role="img" aria-label={say('exercise.timeline.label', { marks: facts.map(({ id, at_s }) => `${codes.get(id) ?? ''} ${formatMinutes(at_s)}`).join(', ') })}>
        <defs>
          <pattern id="short" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line className={styles.hatch} x1="0" x2="0" y1="0" y2="6" /></pattern>
        </defs>
        {minuteMarks(end_s, plot).map((mark_s) => (
          <line key={mark_s} className={styles.grid} x1={x(mark_s)} x2={x(mark_s)} y1={TOP} y2={height - 4} />
        ))}
        <text className={styles.label} x={LEFT - 8} y={TOP + 4} textAnchor="end">{formatQuantity(most_gpm, 'gpm', system)}</text>
        <text className={styles.label} x={LEFT - 8} y={base} textAnchor="end">0</text>
        <path className={styles.short} d={`${line(stepsWithin(record.asked, counted_s, Infinity))}V${base}H${x(counted_s).toFixed(1)}Z`} />
        <path className={styles.came} d={`${line(record.flow)}V${base}H${x(record.flow[0]?.from_s ?? 0).toFixed(1)}Z`} />
        <path className={styles.asked} d={line(record.asked)} />
        <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={base} y2={base} />
        {record.levels.map(({ dumpSiteId, points }, index) => {
          const top = tankTop(index)
          const most_gal = Math.max(1, ...points.map(({ level_gal }) => level_gal))
          const path = points.map(({ time_s, level_gal }, k) => `${k === 0 ? 'M' : 'L'}${x(time_s).toFixed(1)} ${(top + TANK * (1 - level_gal / most_gal)).toFixed(1)}`).join('')
          return (
            <g key={dumpSiteId}>
              <path className={styles.came} d={`${path}L${x(points.at(-1)?.time_s ?? 0).toFixed(1)} ${top + TANK}L${x(points[0]?.time_s ?? 0).toFixed(1)} ${top + TANK}Z`} />
              <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={top + TANK} y2={top + TANK} />
              <text className={styles.label} x={LEFT - 8} y={top + 6} textAnchor="end">{formatQuantity(most_gal, 'gal', system, { style: 'headline' })}</text>
            </g>
          )
        })}
        {facts.map(({ id, at_s, cause }, k) => <line key={id} className={cause === 'inject' ? styles.trouble : styles.decision} x1={x(at_s)} x2={x(at_s)} y1={rowOf(k) - 8} y2={height - 4} />)}
        {/* Words last: their halo keeps every line off them. */}
        {minuteMarks(end_s, plot).map((mark_s) => <text key={mark_s} className={styles.label} x={x(mark_s)} y={base + 14} textAnchor={mark_s === 0 ? 'start' : 'middle'}>{formatMinutes(mark_s)}</text>)}
        {record.levels.map(({ dumpSiteId }, index) => <text key={dumpSiteId} className={styles.label} x={LEFT + 3} y={tankTop(index) - 4}>{say('exercise.tank', { site: names(dumpSiteId) ?? dumpSiteId })}</text>)}
        {facts.map(({ id, at_s }, k) => {
          const isRight = x(at_s) > width - 40
          return <text key={id} className={styles.mark} x={x(at_s) + (isRight ? -4 : 4)} y={rowOf(k)} textAnchor={isRight ? 'end' : 'start'}>{codes.get(id)}</text>
        })}
      </svg>
      <ul className={styles.keys}>
        <li><span className={styles.keyCame} aria-hidden="true" /> {say('exercise.timeline.came')}</li>
        <li><span className={styles.keyShort} aria-hidden="true" /> {say('exercise.timeline.short')}</li>
        <li><span className={styles.keyTrouble} aria-hidden="true" /> {say('exercise.timeline.trouble')}</li>
        <li><span className={styles.keyDecision} aria-hidden="true" /> {say('exercise.timeline.decision')}</li>
      </ul>
    </figure>
  )
}
