'use client'

import { useId } from 'react'
import type { Unit } from '@/lib/units'
import { formatClock, formatValue, displayUnit, type UnitSystem } from '../_text'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './line-chart.module.css'
import { ticksOf } from './scale'
import { useWidth } from './use-width'

export type ChartSeries = { readonly id: string; readonly label: string; readonly look: 'water' | 'strong' | 'dash' | 'dots' | 'thin'; readonly points: readonly (readonly [number, number])[] }
export type ChartMark = { readonly x: number; readonly y: number }

export type LineChartProps = {
  /** What the chart shows, for those who hear it. */
  title: string
  x: { readonly label: string; readonly unit: Unit; readonly most: number }
  y: { readonly label: string; readonly unit: Unit; readonly most: number }
  series: readonly ChartSeries[]
  /** Hollow points, such as those of a published table. */
  marks?: { readonly label: string; readonly points: readonly ChartMark[] }
  /** An upright line with a point on it: where the site lies. Its name stands in the legend, its value at the point. */
  site?: { readonly label: string; readonly value: string; readonly x: number; readonly y: number }
}

const HEIGHT = 300
const EDGE = { left: 52, right: 14, top: 14, bottom: 40 } as const

/** Lines over two axes from 0, drawn in the units in use, with a legend of their strokes. */
export function LineChart({ title, x, y, series, marks, site }: LineChartProps) {
  const [system] = useUnitSystem()
  const [holder, width] = useWidth()
  const clip = useId()
  const across = Math.max(1, width - EDGE.left - EDGE.right)
  const down = HEIGHT - EDGE.top - EDGE.bottom
  const atX = (value: number) => EDGE.left + (value / x.most) * across
  const atY = (value: number) => HEIGHT - EDGE.bottom - (value / y.most) * down
  const path = (points: ChartSeries['points']) => points.map(([px, py], index) => `${index === 0 ? 'M' : 'L'}${atX(px).toFixed(1)} ${atY(py).toFixed(1)}`).join('')
  return (
    <figure className={styles.chart} ref={holder}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} className={styles.picture} role="img" aria-label={title}>
          <clipPath id={clip}><rect x={EDGE.left} y={0} width={across} height={HEIGHT - EDGE.bottom} /></clipPath>
          {ticksOf(y.most, y.unit, system, 5).map((tick) => (
            <g key={tick}>
              <line className={styles.grid} x1={EDGE.left} x2={width - EDGE.right} y1={atY(tick)} y2={atY(tick)} />
              <text className={styles.tick} x={EDGE.left - 6} y={atY(tick)} dy="0.35em" textAnchor="end">{tickText(tick, y.unit, system)}</text>
            </g>
          ))}
          {ticksOf(x.most, x.unit, system, Math.min(8, Math.max(3, Math.floor(across / 70)))).map((tick) => (
            <g key={tick}>
              <line className={styles.grid} x1={atX(tick)} x2={atX(tick)} y1={EDGE.top} y2={HEIGHT - EDGE.bottom} />
              <text className={styles.tick} x={atX(tick)} y={HEIGHT - EDGE.bottom + 16} textAnchor="middle">{tickText(tick, x.unit, system)}</text>
            </g>
          ))}
          <text className={styles.axis} x={width - EDGE.right} y={HEIGHT - 6} textAnchor="end">{axisText(x.label, x.unit, system)}</text>
          <text className={styles.axis} x={4} y={EDGE.top - 2} dominantBaseline="hanging" dx={EDGE.left}>{axisText(y.label, y.unit, system)}</text>
          <g clipPath={`url(#${clip})`}>
            {series.map(({ id, look, points }) => <path key={id} className={`${styles.line} ${styles[look]}`} d={path(points)} />)}
            {site && <line className={styles.here} x1={atX(site.x)} x2={atX(site.x)} y1={EDGE.top} y2={HEIGHT - EDGE.bottom} />}
          </g>
          {marks?.points.map((mark) => <path key={`${mark.x} ${mark.y}`} className={styles.mark} d={diamond(atX(mark.x), atY(mark.y))} />)}
          {site && (
            <g>
              <circle className={styles.dot} cx={atX(site.x)} cy={atY(site.y)} r={5} />
              <text className={styles.site} x={atX(site.x)} dx={atX(site.x) > width * 0.6 ? -9 : 9} y={Math.max(EDGE.top + 26, atY(site.y) - 10)} textAnchor={atX(site.x) > width * 0.6 ? 'end' : 'start'}>{site.value}</text>
            </g>
          )}
        </svg>
      )}
      <figcaption className={styles.legend}>
        {series.map(({ id, label, look }) => (
          <span key={id} className={styles.key}>
            <svg width={30} height={10} aria-hidden="true"><path className={`${styles.line} ${styles[look]}`} d="M1 5H29" /></svg>
            {label}
          </span>
        ))}
        {site && <span className={styles.key}><svg width={14} height={14} aria-hidden="true"><line className={styles.here} x1={7} x2={7} y1={0} y2={14} /><circle className={styles.dot} cx={7} cy={7} r={4} /></svg>{site.label}</span>}
        {marks && marks.points.length > 0 && <span className={styles.key}><svg width={14} height={12} aria-hidden="true"><path className={styles.mark} d={diamond(7, 6)} /></svg>{marks.label}</span>}
      </figcaption>
    </figure>
  )
}

const diamond = (x: number, y: number): string => `M${x} ${y - 5}L${x + 5} ${y}L${x} ${y + 5}L${x - 5} ${y}Z`
const tickText = (value: number, unit: Unit, system: UnitSystem): string => (unit === 's' ? formatClock(value) : formatValue(value, unit, system))
const axisText = (label: string, unit: Unit, system: UnitSystem): string => (unit === 's' ? label : `${label}, ${displayUnit(unit, system).symbol}`)
