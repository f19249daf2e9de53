'use client'

import { useState } from 'react'
import { shortNames } from '@/lib/plan'
import { formatFrom, formatMinutes, formatQuantity, formatShare, say } from '../_text'
import type { NameOf } from '../_text'
import { Segments } from '../_ui/segments'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { SupplyChart } from '@/lib/supply'
import { linesOf, minuteMarks, pathOf, tankArea, type ChartLine } from './chart-lines'
import { startMarks } from './start-marks'
import { stringLabels } from './string-labels'
import { useWidth } from './use-width'
import styles from './string-chart.module.css'

export type StringChartProps = {
  chart: SupplyChart
  names: NameOf
  /** Where the time axis ends, for charts that stand together; without it the chart offers its own spans. */
  shared_s?: number
  /** Short names of tenders by id, where others than these may come; without them they are made of those in the chart. */
  marks?: ReadonlyMap<string, string>
}

const ROAD_HEIGHT = 150
const TANK_HEIGHT = 56
const LEFT = 76
const RIGHT = 10
const TOP = 16
const spans = ['30', '60', 'all'] as const
type Span = (typeof spans)[number]

/**
 * Time across, road distance up: every tender a line between dump and fill, waiting drawn flat and
 * marked, the portable tanks' level underneath.
 */
export function StringChart({ chart, names, shared_s, marks }: StringChartProps) {
  const [holder, width] = useWidth()
  const [span, setSpan] = useState<Span>('60')
  const [pointed, setPointed] = useState<string>()
  const [system] = useUnitSystem()
  const end_s = shared_s ?? (span === 'all' ? chart.end_s : Math.min(chart.end_s, Number(span) * 60))
  const plot = Math.max(50, width - LEFT - RIGHT)
  const x = (time_s: number) => LEFT + (Math.min(time_s, end_s) / end_s) * plot
  const y = (share: number) => TOP + ROAD_HEIGHT * (1 - share)
  const lines = linesOf(chart, marks ?? shortNames(chart.tenders.map(({ id }) => ({ id, name: names(id) ?? id }))))
  const height = TOP + ROAD_HEIGHT + 22 + chart.tanks.length * (TANK_HEIGHT + 14) + 4
  const { supplyReady_s } = chart
  return (
    <figure className={styles.chart} ref={holder} aria-label={say('plan.chart.label')}>
      <div className={styles.head}>
        {shared_s === undefined && <Segments label={say('plan.chart.span')} value={span} onCommit={setSpan} choices={spans.map((value) => ({ value, label: value === 'all' ? say('plan.chart.all') : formatMinutes(Number(value) * 60) }))} />}
        <ul className={styles.keys}>
          {lines.map(({ id, letter, dash }) => (
            <li key={id}>
              <button type="button" className={joinClasses(styles.key, pointed === id && styles.pointed)} aria-pressed={pointed === id} onClick={() => { setPointed(pointed === id ? undefined : id) }} onMouseEnter={() => { setPointed(id) }} onMouseLeave={() => { setPointed(undefined) }}>
                <svg width="28" height="10" aria-hidden="true"><line x1="1" x2="27" y1="5" y2="5" className={styles.line} strokeDasharray={dash} /></svg>
                {keyOf(letter, names(id) ?? id)}
              </button>
            </li>
          ))}
        </ul>
      </div>
      <svg className={styles.picture} width={Math.max(width, 1)} height={height} viewBox={`0 0 ${Math.max(width, 1)} ${height}`} role="img" aria-label={summaryOf(chart, names)}>
        {minuteMarks(end_s, plot).map((mark_s) => (
          <line key={mark_s} className={styles.grid} x1={x(mark_s)} x2={x(mark_s)} y1={TOP} y2={height - 4} />
        ))}
        <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={y(1)} y2={y(1)} />
        <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={y(0)} y2={y(0)} />
        {lines.map((line) => <Tender key={line.id} line={line} x={x} y={y} end_s={end_s} isPointed={pointed === line.id} isQuiet={pointed !== undefined && pointed !== line.id} />)}
        {supplyReady_s !== undefined && supplyReady_s < end_s && <line className={styles.ready} x1={x(supplyReady_s)} x2={x(supplyReady_s)} y1={4} y2={height - 4} />}
        {chart.tanks.map((tank, index) => {
          const top = TOP + ROAD_HEIGHT + 24 + index * (TANK_HEIGHT + 14)
          const level = (gal: number) => top + TANK_HEIGHT * (1 - gal / tank.capacity_gal)
          return (
            <g key={`${tank.id}${tank.isFront ? ' front' : ''}`}>
              <path className={styles.water} d={tankArea(tank.levels, Math.min(end_s, chart.end_s), x, level, top + TANK_HEIGHT)} />
              <line className={styles.lip} x1={LEFT} x2={width - RIGHT} y1={top} y2={top} />
              <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={top + TANK_HEIGHT} y2={top + TANK_HEIGHT} />
              <text className={styles.label} x={LEFT - 8} y={top + 4} textAnchor="end">{formatQuantity(tank.capacity_gal, 'gal', system)}</text>
              <text className={styles.label} x={LEFT - 8} y={top + TANK_HEIGHT / 2 + 4} textAnchor="end">{say(tank.isFront ? 'plan.chart.front' : 'plan.chart.tank')}</text>
              <text className={styles.label} x={LEFT - 8} y={top + TANK_HEIGHT} textAnchor="end">0</text>
            </g>
          )
        })}
        {/* Words last: their halo keeps every line off them. */}
        {minuteMarks(end_s, plot).map((mark_s) => <text key={mark_s} className={styles.label} x={x(mark_s)} y={TOP + ROAD_HEIGHT + 14} textAnchor={mark_s === 0 ? 'start' : 'middle'}>{formatMinutes(mark_s)}</text>)}
        <text className={styles.label} x={LEFT - 8} y={y(1) + 4} textAnchor="end">{say('plan.chart.fill')}</text>
        <text className={styles.label} x={LEFT - 8} y={y(0) + 4} textAnchor="end">{say('plan.chart.dump')}</text>
        {supplyReady_s !== undefined && supplyReady_s < end_s && <text className={styles.label} x={x(supplyReady_s) + 4} y={11}>{say('plan.chart.ready', { time: formatFrom(supplyReady_s) })}</text>}
        {stringLabels(lines, end_s, x).map(({ id, words, x: at, share }) => (
          <text key={`${id} ${at}`} className={joinClasses(styles.letter, pointed !== undefined && id !== pointed && styles.quiet)} x={at} y={y(share) + 4} textAnchor="middle">{words}</text>
        ))}
        {startMarks(lines, end_s, x, LEFT).map(({ ids, words, right, share }) => (
          <text key={ids.join(' ')} className={joinClasses(styles.letter, pointed !== undefined && !ids.includes(pointed) && styles.quiet)} x={right} y={y(share) - 4} textAnchor="end">{words}</text>
        ))}
      </svg>
      {shared_s === undefined && <p className={styles.note}>{say('plan.chart.note')}</p>}
    </figure>
  )
}

/** A name that has the short one among its words needs it no second time. */
const keyOf = (letter: string, name: string): string => (name.split(/\s+/).includes(letter) ? name : say('plan.chart.key', { letter, name }))

function Tender({ line, x, y, end_s, isPointed, isQuiet }: { line: ChartLine; x: (time_s: number) => number; y: (share: number) => number; end_s: number; isPointed: boolean; isQuiet: boolean }) {
  return (
    <g className={joinClasses(isPointed && styles.strong, isQuiet && styles.quiet)}>
      <path className={styles.line} d={pathOf(line.points, end_s, x, y)} strokeDasharray={line.dash} />
      {line.waits.filter(({ from_s }) => from_s < end_s).map(({ from_s, to_s, share }) => <line key={from_s} className={styles.wait} x1={x(from_s)} x2={x(to_s)} y1={y(share)} y2={y(share)} />)}
    </g>
  )
}

function summaryOf({ tenders }: SupplyChart, names: NameOf): string {
  return tenders.map(({ id, segments }) => {
    const total_s = segments.reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0)
    const waiting_s = segments.filter(({ phase }) => phase.startsWith('waits')).reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0)
    const loads = segments.filter(({ phase }) => phase === 'dumps').length
    return say('plan.chart.tender', { name: names(id) ?? id, loads, waiting: formatShare(total_s > 0 ? waiting_s / total_s : 0) })
  }).join(' ')
}
