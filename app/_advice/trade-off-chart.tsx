'use client'

import type { TradeOffPoint } from '@/lib/advise'
import { formatAsked, formatGiven, formatValue, say } from '../_text'
import '../_text/areas/advice'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './advice.module.css'

const WIDTH = 420
const HEIGHT = 240
const [LEFT, TOP, RIGHT, BOTTOM] = [16, 26, 16, 34]

/** Most flow by number of tenders, with the asked flow across. The table beside it says the same. */
export function TradeOffChart({ curve, asked_gpm }: { curve: readonly TradeOffPoint[]; asked_gpm: number }) {
  const [system] = useUnitSystem()
  const flow = (value: number) => formatGiven(value, system)
  const most_gpm = Math.max(asked_gpm, ...curve.map(({ flow_gpm }) => flow_gpm), 1) * 1.08
  const y = (value: number) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - value / most_gpm)
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, curve.length)
  const width = Math.min(44, step * 0.62)
  const spoken = curve.map(({ tenderCount, flow_gpm }) => say('advice.request.curve.text', { count: tenderCount, flow: flow(flow_gpm) })).join('; ')
  return (
    <svg className={styles.chart} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={say('advice.request.curve.heard', { title: say('advice.request.curve.flow'), list: spoken })}>
      {curve.map(({ tenderCount, flow_gpm }, index) => {
        const middle = LEFT + step * (index + 0.5)
        return (
          <g key={tenderCount}>
            <rect className={styles.column} x={middle - width / 2} y={y(flow_gpm)} width={width} height={Math.max(0, HEIGHT - BOTTOM - y(flow_gpm))} rx={2} />
            {curve.length <= 14 && <text className={styles.value} x={middle} y={y(flow_gpm) - 5} textAnchor="middle">{formatValue(flow_gpm, 'gpm', system, { style: 'headline', toward: 'down' })}</text>}
            <text className={styles.label} x={middle} y={HEIGHT - BOTTOM + 16} textAnchor="middle">{tenderCount}</text>
          </g>
        )
      })}
      <line className={styles.axis} x1={LEFT} x2={WIDTH - RIGHT} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} />
      <line className={styles.asked} x1={LEFT} x2={WIDTH - RIGHT} y1={y(asked_gpm)} y2={y(asked_gpm)} />
      <text className={styles.label} x={LEFT} y={12}>{say('advice.request.curve.asked', { flow: formatAsked(asked_gpm, system) })}</text>
      <text className={styles.label} x={WIDTH - RIGHT} y={HEIGHT - 4} textAnchor="end">{say('advice.request.curve.tenders')}</text>
    </svg>
  )
}
