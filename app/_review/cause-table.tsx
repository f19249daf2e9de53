import type { Difference } from '@/lib/review'
import { displayUnit, formatNumber, say } from '../_text'
import '../_text/areas/review'
import { useUnitSystem } from '../_ui/unit-system-context'
import { addingUp } from './adding-up'
import shared from '../_look/shared.module.css'
import styles from './review.module.css'

/** From the flow planned to the flow achieved, part by part, each with a bar to either side; the parts add up as they are shown. */
export function CauseTable({ difference }: { difference: Difference }) {
  const [system] = useUnitSystem()
  const { factor, symbol } = displayUnit('gpm', system)
  const { planned_gpm, achieved_gpm, parts, unexplained_gpm, bound_gpm } = difference
  const planned = Math.round(planned_gpm * factor)
  const achieved = Math.round(achieved_gpm * factor)
  const rest = (achieved - planned) - parts.reduce((sum, { gpm }) => sum + gpm * factor, 0)
  const shown = addingUp([...parts.map(({ gpm }) => gpm * factor), rest])
  const rows = [
    ...parts.map(({ cause }, k) => ({ key: cause as string, label: say(`review.cause.${cause}`), means: say(`review.cause.${cause}.means`), value: shown[k]! })).sort((a, b) => Math.abs(b.value) - Math.abs(a.value)),
    { key: 'unexplained', label: say('review.cause.unexplained'), means: say('review.cause.unexplained.means', { bound: `${formatNumber(Math.ceil(bound_gpm * factor))} ${symbol}` }), value: shown[parts.length]! },
  ]
  const most = Math.max(1, Math.abs(unexplained_gpm * factor), ...rows.map(({ value }) => Math.abs(value)))
  const signed = (value: number) => (value > 0 ? `+${formatNumber(value)}` : formatNumber(value))
  return (
    <div className={styles.scroll} role="region" aria-label={say('review.causes')} tabIndex={0}>
      <table className={styles.causes}>
        <caption className={shared.heard}>{say('review.causes')}</caption>
        <thead><tr><th scope="col">{say('review.causes.part')}</th><th scope="col" className={styles.number}>{symbol}</th><th scope="col" className={styles.barHead} aria-hidden="true" /></tr></thead>
        <tbody>
          <tr className={styles.total}><th scope="row">{say('review.planned')}</th><td className={styles.number}>{formatNumber(planned)}</td><td aria-hidden="true" /></tr>
          {rows.map(({ key, label, means, value }) => (
            <tr key={key}>
              <th scope="row">{label}<span className={styles.means}>{means}</span></th>
              <td className={styles.number}>{signed(value)}</td>
              <td className={styles.barCell} aria-hidden="true"><Bar share={value / most} /></td>
            </tr>
          ))}
          <tr className={styles.total}><th scope="row">{say('review.achieved')}</th><td className={styles.number}>{formatNumber(achieved)}</td><td aria-hidden="true" /></tr>
        </tbody>
      </table>
    </div>
  )
}

/** To the left what cost water, to the right what brought more. */
function Bar({ share }: { share: number }) {
  const width = Math.abs(share) * 50
  return (
    <svg className={styles.bar} viewBox="0 0 100 12" preserveAspectRatio="none">
      {share !== 0 && <rect x={share < 0 ? 50 - width : 50} y="2" width={width} height="8" className={share < 0 ? styles.cost : styles.gain} />}
      <line x1="50" x2="50" y1="0" y2="12" className={styles.axis} vectorEffect="non-scaling-stroke" />
    </svg>
  )
}
