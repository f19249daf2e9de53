'use client'

import { useMemo } from 'react'
import type { HoseLayAnswer } from '@/lib/supply'
import { Plot, type PlotProps } from '../_charts/plot'
import { displayUnit, formatNumber, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/hose'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

/** Pressure and ground along the lay, drawn and as tables. */
export function LayPlots({ answer, names }: { answer: HoseLayAnswer; names: NameOf }) {
  const [system] = useUnitSystem()
  const pressure = useMemo(() => (answer.plot.length > 0 ? pressurePlotOf(answer, names, system) : undefined), [answer, names, system])
  const ground = useMemo(() => (answer.ground.length > 1 && answer.heights !== 'none' ? groundPlotOf(answer, names, system) : undefined), [answer, names, system])
  if (!pressure && !ground) return null
  return (
    <div className={styles.sheet}>
      {pressure && <Plot {...pressure} />}
      {ground && <Plot {...ground} />}
    </div>
  )
}

const marksOf = ({ pumpers }: HoseLayAnswer, names: NameOf, factor: number) => pumpers.map(({ id, at_ft }) => ({ x: at_ft * factor, label: names(id) ?? id }))

/** Rows of the table at each tenth of the lay, besides those at the pumpers. */
const TABLE_PARTS = 10

function pressurePlotOf(answer: HoseLayAnswer, names: NameOf, system: UnitSystem): PlotProps {
  const { plot, pumpers, hose_ft = 0 } = answer
  const foot = displayUnit('ft', system), psi = displayUnit('psi', system)
  const words = (value: number) => formatQuantity(value, 'psi', system)
  const first = plot[0], last = plot[plot.length - 1]
  return {
    title: say('hose.profile'),
    heard: say('hose.profile.heard', { first: words(first?.flowing_psi ?? 0), last: words(last?.flowing_psi ?? 0), count: Math.max(0, pumpers.length - 1) }),
    x: plot.map(({ at_ft }) => at_ft * foot.factor), xWords: (value) => formatNumber(value), xLabel: say('hose.profile.distance-unit', { unit: foot.symbol }), yLabel: say('hose.profile.pressure-unit', { unit: psi.symbol }),
    lines: [
      { label: say('hose.profile.flowing'), values: plot.map(({ flowing_psi }) => flowing_psi * psi.factor), colour: '--water', width: 3 },
      { label: say('hose.profile.stopped'), values: plot.map(({ stopped_psi }) => stopped_psi * psi.factor), colour: '--ink', dash: [6, 4] },
      { label: say('hose.profile.working'), values: plot.map(({ working_psi }) => working_psi * psi.factor), colour: '--danger', dash: [2, 3] },
    ],
    marks: marksOf(answer, names, foot.factor),
    table: {
      head: [say('hose.column.at'), say('hose.profile.flowing'), say('hose.profile.stopped'), say('hose.profile.working')],
      rows: tableRows(answer, names, system, hose_ft).map(([place, point]) => [place, words(point.flowing_psi), words(point.stopped_psi), words(point.working_psi)]),
    },
  }
}

/** Before and behind each pumper, at each tenth of the lay, and at its end; each place named once. */
function tableRows({ plot, pumpers }: HoseLayAnswer, names: NameOf, system: UnitSystem, hose_ft: number): [string, HoseLayAnswer['plot'][number]][] {
  const rows = new Map<string, HoseLayAnswer['plot'][number]>()
  let tenth = 0
  plot.forEach((point, i) => {
    const place = formatQuantity(point.at_ft, 'ft', system)
    const pumper = pumpers.find(({ at_ft }) => at_ft === point.at_ft)
    const isTenth = point.at_ft >= (tenth * hose_ft) / TABLE_PARTS - 1e-6
    if (isTenth) tenth = Math.floor((point.at_ft / hose_ft) * TABLE_PARTS + 1e-6) + 1
    if (pumper) rows.set(say(plot[i + 1]?.at_ft === point.at_ft ? 'hose.profile.before' : 'hose.profile.behind', { place, name: names(pumper.id) ?? pumper.id }), point)
    else if (isTenth || i === plot.length - 1) rows.set(place, point)
  })
  return [...rows]
}

function groundPlotOf(answer: HoseLayAnswer, names: NameOf, system: UnitSystem): PlotProps {
  const { ground, hose_ft, rise_ft } = answer
  const foot = displayUnit('ft', system)
  const lowest_ft = Math.min(...ground.map(({ height_ft }) => height_ft))
  const highest_ft = Math.max(...ground.map(({ height_ft }) => height_ft))
  const step = Math.max(1, Math.ceil(ground.length / TABLE_PARTS))
  const rows = new Map(ground.filter((_, i) => i % step === 0 || i === ground.length - 1).map(({ at_ft, height_ft }) => [formatQuantity(at_ft, 'ft', system), formatQuantity(height_ft - lowest_ft, 'ft', system)]))
  return {
    title: say('hose.ground'),
    heard: say('hose.ground.heard', { rise: formatQuantity(rise_ft, 'ft', system), highest: formatQuantity(highest_ft - lowest_ft, 'ft', system) }),
    x: ground.map(({ at_ft }) => at_ft * foot.factor), xWords: (value) => formatNumber(value),
    xLabel: hose_ft === undefined ? say('hose.ground.distance-unit', { unit: foot.symbol }) : say('hose.profile.distance-unit', { unit: foot.symbol }),
    yLabel: say('hose.profile.height-unit', { unit: foot.symbol }),
    lines: [{ label: say('hose.profile.height'), values: ground.map(({ height_ft }) => (height_ft - lowest_ft) * foot.factor), colour: '--ink' }],
    marks: marksOf(answer, names, foot.factor),
    table: { head: [say('hose.column.at'), say('hose.profile.height')], rows: [...rows] },
  }
}
