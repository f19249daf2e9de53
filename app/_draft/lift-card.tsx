'use client'

import { useMemo, useState } from 'react'
import { classicalLiftTable, type SuctionSetup } from '@/lib/hydraulics'
import { draftWith, type DraftSheet } from '@/lib/supply'
import { LineChart, type ChartMark, type ChartSeries } from '../_charts/line-chart'
import { displayUnit, formatGiven, formatQuantity, formatValue, inUnits, say } from '../_text'
import '../_text/areas/draft'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'
import { setupText } from './sheet-words'

const MOST_LIFT_FT = 30
const LOOKS: readonly ChartSeries['look'][] = ['strong', 'dash', 'dots', 'thin']
const TABLE_LIFTS_FT = [0, 4, 8, 10, 12, 15, 18, 20, 22, 24, 26] as const

/** Flow against lift for the pumper through its set-up and the next best ones, the site marked. */
export function LiftCard({ sheet }: { sheet: DraftSheet }) {
  const [system] = useUnitSystem()
  const [isTable, setIsTable] = useState(false)
  const { suction, pump, place, capacity, draftSite } = sheet
  const setups = useMemo(() => setupsOf(suction), [suction])
  // Steep before its end: the lift where flow ends is drawn too.
  const lifts = useMemo(() => [...Array.from({ length: MOST_LIFT_FT * 2 + 1 }, (_, step) => step / 2), Math.min(MOST_LIFT_FT, Math.max(0, capacity.zeroFlowLift_ft))].sort((a, b) => a - b), [capacity])
  const series = useMemo(() => setups.map((setup, index): ChartSeries => ({
    id: String(index),
    label: setupText(setup, system),
    look: index === 0 ? 'water' : (LOOKS[index - 1] ?? 'thin'),
    points: lifts.map((at_ft) => [at_ft, draftWith(sheet, { suction: setup, lift_ft: at_ft }).flow_gpm] as const),
  })), [sheet, setups, lifts, system])
  const marks = useMemo(() => marksOf(pump.rated_gpm, setups), [pump, setups])
  const most_gpm = Math.max(...series.flatMap(({ points }) => points.map(([, flow]) => flow)), ...marks.map(({ y }) => y), 100) * 1.08
  const lift_ft = Math.max(0, Math.min(MOST_LIFT_FT, place.lift_ft))
  const title = say('draft.plot.heard', { pump: pump.name, lift: formatQuantity(place.lift_ft, 'ft', system), flow: formatGiven(capacity.flow_gpm, system), most: formatQuantity(capacity.zeroFlowLift_ft, 'ft', system) })
  return (
    <Card title={say('draft.plot')} summary={say('draft.plot.summary', { most: formatQuantity(capacity.zeroFlowLift_ft, 'ft', system) })} startsOpen>
      <LineChart
        title={title} series={series}
        x={{ label: say('draft.lift'), unit: 'ft', most: MOST_LIFT_FT }} y={{ label: say('draft.flow'), unit: 'gpm', most: most_gpm }}
        marks={{ label: say('draft.plot.classical'), points: marks }}
        site={{ label: say('draft.plot.site', { site: draftSite.name, flow: formatGiven(capacity.flow_gpm, system) }), value: formatGiven(capacity.flow_gpm, system), x: lift_ft, y: capacity.flow_gpm }}
      />
      <p className={styles.quiet}>{inUnits(say(marks.length > 0 ? 'draft.plot.classical.note' : 'draft.plot.no-classical'), system)}</p>
      <Button size="s" look="quiet" label={say(isTable ? 'draft.plot.hide-table' : 'draft.plot.show-table')} aria-expanded={isTable} onClick={() => { setIsTable(!isTable) }} />
      {isTable && (
        <DataTable
          caption={say('draft.plot')} isCaptionHidden rows={TABLE_LIFTS_FT} rowKey={String}
          columns={[
            { key: 'lift', head: say('draft.lift'), unit: displayUnit('ft', system).symbol, isNumber: true, cell: (at_ft) => formatValue(at_ft, 'ft', system) },
            ...setups.map((setup, index) => ({
              key: String(index), head: setupText(setup, system), unit: displayUnit('gpm', system).symbol, isNumber: true,
              cell: (at_ft: number) => formatValue(draftWith(sheet, { suction: setup, lift_ft: at_ft }).flow_gpm, 'gpm', system, { style: 'headline', toward: 'down' }),
            })),
          ]}
        />
      )}
    </Card>
  )
}

/** The own set-up, and what a size up, a size down and a second line would give. */
function setupsOf(own: SuctionSetup): readonly SuctionSetup[] {
  const sizes = [4, 4.5, 5, 6]
  const bigger = sizes.find((size) => size > own.size_in)
  const smaller = sizes.findLast((size) => size < own.size_in)
  return [
    own,
    { ...own, lineCount: own.lineCount === 1 ? 2 : 1 },
    ...(bigger === undefined ? [] : [{ ...own, size_in: bigger }]),
    ...(smaller === undefined ? [] : [{ ...own, size_in: smaller }]),
  ]
}

/** Cells of the classical table for this rating through a set-up that is drawn: one line with a barrel strainer on the side. */
function marksOf(rated_gpm: number | undefined, setups: readonly SuctionSetup[]): readonly ChartMark[] {
  const plain = setups.filter(({ lineCount, strainer = 'barrel', intake = 'side', dryHydrant }) => lineCount === 1 && strainer === 'barrel' && intake === 'side' && !dryHydrant)
  return classicalLiftTable.columns.flatMap((column, index) =>
    column.rated_gpm === rated_gpm && plain.some(({ size_in }) => size_in === column.size_in)
      ? classicalLiftTable.rows.filter(({ length_ft }) => plain.some((setup) => setup.size_in === column.size_in && setup.length_ft === length_ft)).map(({ lift_ft, flows_gpm }) => ({ x: lift_ft, y: flows_gpm[index] ?? 0 }))
      : [])
}
