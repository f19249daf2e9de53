import { linesOf, minuteMarks, pathOf } from '../_charts/chart-lines'
import { useWidth } from '../_charts/use-width'
import type { SupplyChart } from '@/lib/supply'
import { formatFrom, formatMinutes, formatQuantity, say } from '../_text'
import '../_text/areas/compare'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { isBack } from './overlaid-strips'
import styles from './overlay.module.css'
import { markOfPlan } from './plan-keys'
import { waterHeld } from './water-held'

type Props = { charts: readonly (SupplyChart | undefined)[]; planNames: readonly string[]; end_s: number; chosen: number | undefined }

/** On a phone so much of the time is shown as leaves the lines apart. */
const [NARROW_PX, NARROW_S] = [520, 40 * 60]
const [ROAD_HEIGHT, TANK_HEIGHT, LEFT, RIGHT, TOP] = [150, 84, 76, 10, 22]

/** The tenders' strings of several plans over each other, and under them the water in their portable tanks, on one time axis. */
export function OverlaidCharts({ charts, planNames, end_s: whole_s, chosen }: Props) {
  const [holder, width] = useWidth()
  const end_s = width > 0 && width < NARROW_PX ? Math.min(whole_s, NARROW_S) : whole_s
  const [system] = useUnitSystem()
  const plot = Math.max(50, width - LEFT - RIGHT)
  const x = (time_s: number) => LEFT + (Math.min(time_s, end_s) / end_s) * plot
  const y = (share: number) => TOP + ROAD_HEIGHT * (1 - share)
  const shown = charts.flatMap((chart, index) => (chart ? [{ chart, index, held: waterHeld(chart) }] : []))
  const most_gal = Math.max(1, ...shown.flatMap(({ held }) => held.map(({ held_gal }) => held_gal)))
  const top = TOP + ROAD_HEIGHT + 26
  const level = (gal: number) => top + TANK_HEIGHT * (1 - gal / most_gal)
  const gallons = (value: number) => formatQuantity(value, 'gal', system, { style: 'headline' })
  const spoken = shown.map(({ chart, index, held }) => say('compare.overlay.heard', {
    name: planNames[index] ?? '', loads: chart.tenders.reduce((sum, { segments }) => sum + segments.filter(({ phase, from_s }) => phase === 'dumps' && from_s < end_s).length, 0),
    most: gallons(Math.max(0, ...held.filter(({ time_s }) => time_s <= end_s).map(({ held_gal }) => held_gal))),
    ready: chart.supplyReady_s === undefined ? 'never' : formatFrom(chart.supplyReady_s),
  })).join(' ')
  return (
    <figure className={styles.chart} ref={holder} aria-label={say('compare.overlay.charts')}>
      <svg className={styles.picture} width={Math.max(width, 1)} height={top + TANK_HEIGHT + 6} role="img" aria-label={spoken}>
        {minuteMarks(end_s, plot).map((mark_s) => (
          <g key={mark_s}>
            <line className={styles.grid} x1={x(mark_s)} x2={x(mark_s)} y1={TOP} y2={top + TANK_HEIGHT} />
            <text className={styles.label} x={x(mark_s)} y={TOP + ROAD_HEIGHT + 14} textAnchor={mark_s === 0 ? 'start' : 'middle'}>{formatMinutes(mark_s)}</text>
          </g>
        ))}
        {[1, 0].map((share) => <text key={share} className={styles.label} x={LEFT - 8} y={y(share) + 4} textAnchor="end">{say(share === 1 ? 'plan.chart.fill' : 'plan.chart.dump')}</text>)}
        <text className={styles.label} x={LEFT - 8} y={top + 4} textAnchor="end">{gallons(most_gal)}</text>
        <text className={styles.label} x={LEFT - 8} y={top + TANK_HEIGHT / 2 + 4} textAnchor="end">{say('plan.chart.tank')}</text>
        <text className={styles.label} x={LEFT - 8} y={top + TANK_HEIGHT} textAnchor="end">0</text>
        <line className={styles.edge} x1={LEFT} x2={width - RIGHT} y1={top + TANK_HEIGHT} y2={top + TANK_HEIGHT} />
        {shown.map(({ chart, index, held }) => {
          const { letter, dash } = markOfPlan(index)
          const { supplyReady_s } = chart
          return (
            <g key={letter} className={joinClasses(isBack(chosen, index) && styles.back, chosen === index && styles.front)}>
              {linesOf(chart).map(({ id, points }) => <path key={id} className={styles.string} d={pathOf(points, end_s, x, y)} strokeDasharray={dash} />)}
              <path className={styles.held} d={pathOf(held.map(({ time_s, held_gal }) => ({ time_s, share: held_gal })), end_s, x, level)} strokeDasharray={dash} />
              {supplyReady_s !== undefined && supplyReady_s < end_s && (
                <>
                  <line className={styles.ready} x1={x(supplyReady_s)} x2={x(supplyReady_s)} y1={TOP - 4} y2={top + TANK_HEIGHT} strokeDasharray={dash} />
                  <text className={styles.letter} x={x(supplyReady_s)} y={TOP - 8} textAnchor="middle">{letter}</text>
                </>
              )}
            </g>
          )
        })}
      </svg>
      <figcaption className={styles.caption}>{say('compare.charts.over', { end: formatMinutes(end_s) })}</figcaption>
    </figure>
  )
}
