'use client'

import { useState } from 'react'
import { StringChart } from '../_charts/string-chart'
import { fullWidthOf, SupplyStrip } from '../_charts/supply-strip'
import { formatGiven, formatMinutes, say } from '../_text'
import '../_text/areas/compare'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { CompareColumn } from './compare-column'
import styles from './compare.module.css'
import { OverlaidCharts } from './overlaid-charts'
import { OverlaidStrips } from './overlaid-strips'
import { PlanKeys } from './plan-keys'

/** As far as the charts reach; later rounds repeat. */
const MOST_S = 90 * 60
const ways = ['over', 'under'] as const
type Way = (typeof ways)[number]

/** Strips at one scale and charts on one time axis: of all plans over each other, or each plan's own under the next. */
export function CompareCharts({ columns }: { columns: readonly CompareColumn[] }) {
  const [system] = useUnitSystem()
  const [way, setWay] = useState<Way>('over')
  const [chosen, setChosen] = useState<number>()
  const ready = columns.flatMap(({ plan, names, compared }) => (compared?.answer ? [{ plan, names, ...compared.answer }] : []))
  const full_gpm = fullWidthOf(...ready.map(({ result }) => result))
  const end_s = Math.min(MOST_S, Math.max(60, ...ready.map(({ chart }) => chart?.end_s ?? 0)))
  const planNames = ready.map(({ plan }) => plan.name)
  const isOver = way === 'over'
  if (ready.length === 0) return null
  return (
    <>
      <div className={styles.pictures}>
        <Segments label={say('compare.pictures')} value={way} onCommit={setWay} choices={ways.map((value) => ({ value, label: say(`compare.pictures.${value}`) }))} />
      </div>
      {isOver && <PlanKeys names={planNames} chosen={chosen} onChoose={setChosen} />}
      <section className={styles.part} aria-labelledby="compare-strips">
        <h2 className={styles.subtitle} id="compare-strips">{say('compare.strips')}</h2>
        {isOver
          ? <OverlaidStrips results={ready.map(({ result }) => result)} full_gpm={full_gpm} chosen={chosen} />
          : ready.map(({ plan, names, result }) => (
            <div key={plan.id} className={styles.one}>
              <h3 className={styles.name}>{plan.name}</h3>
              <SupplyStrip result={result} names={names} full_gpm={full_gpm} />
            </div>
          ))}
        <p className={styles.quiet}>{say(isOver ? 'compare.strips.over' : 'compare.strips.legend', { full: formatGiven(full_gpm, system) })}</p>
      </section>
      <section className={styles.part} aria-labelledby="compare-charts">
        <h2 className={styles.subtitle} id="compare-charts">{say('compare.charts')}</h2>
        {isOver
          ? <OverlaidCharts charts={ready.map(({ chart }) => chart)} planNames={planNames} end_s={end_s} chosen={chosen} />
          : ready.map(({ plan, names, chart }) => (
            <div key={plan.id} className={styles.one}>
              <h3 className={styles.name}>{plan.name}</h3>
              {chart ? <StringChart chart={chart} names={names} shared_s={end_s} /> : <p className={styles.quiet}>{say('compare.why.blocked-plain')}</p>}
            </div>
          ))}
        {!isOver && <p className={styles.quiet}>{say('compare.charts.legend', { end: formatMinutes(end_s) })}</p>}
      </section>
    </>
  )
}
