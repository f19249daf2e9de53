import { fullWidthOf, SupplyStrip } from '../_plan/supply-strip'
import { StringChart } from '../_plan/string-chart'
import { formatGiven, formatMinutes, say } from '../_text'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { CompareColumn } from './compare-screen'
import styles from './compare.module.css'

/** As far as the charts reach; later rounds repeat. */
const MOST_S = 90 * 60

/** Strips under each other at one scale, charts under each other on one time axis. */
export function CompareCharts({ columns }: { columns: readonly CompareColumn[] }) {
  const [system] = useUnitSystem()
  const ready = columns.flatMap(({ plan, names, compared }) => (compared?.answer ? [{ plan, names, ...compared.answer }] : []))
  const full_gpm = fullWidthOf(...ready.map(({ result }) => result))
  const end_s = Math.min(MOST_S, Math.max(60, ...ready.map(({ chart }) => chart?.end_s ?? 0)))
  return (
    <>
      <section className={styles.part} aria-labelledby="compare-strips">
        <h2 className={styles.subtitle} id="compare-strips">{say('compare.strips')}</h2>
        {ready.map(({ plan, names, result }) => (
          <div key={plan.id} className={styles.one}>
            <h3 className={styles.name}>{plan.name}</h3>
            <SupplyStrip result={result} names={names} full_gpm={full_gpm} />
          </div>
        ))}
        <p className={styles.quiet}>{say('compare.strips.legend', { full: formatGiven(full_gpm, system) })}</p>
      </section>
      <section className={styles.part} aria-labelledby="compare-charts">
        <h2 className={styles.subtitle} id="compare-charts">{say('compare.charts')}</h2>
        {ready.map(({ plan, names, chart }) => (
          <div key={plan.id} className={styles.one}>
            <h3 className={styles.name}>{plan.name}</h3>
            {chart ? <StringChart chart={chart} names={names} shared_s={end_s} /> : <p className={styles.quiet}>{say('compare.why.blocked-plain')}</p>}
          </div>
        ))}
        <p className={styles.quiet}>{say('compare.charts.legend', { end: formatMinutes(end_s) })}</p>
      </section>
    </>
  )
}
