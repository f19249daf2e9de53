'use client'

import { useMemo } from 'react'
import { lately_gpm, type LogReview } from '@/lib/review'
import { SECONDS_PER_MINUTE } from '@/lib/units'
import { Plot, type PlotProps } from '../_charts/plot'
import { displayUnit, formatMinutes, formatNumber, formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/review'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './review.module.css'

const STEPS_S = [1, 2, 5, 10, 15, 20, 30, 60, 120].map((minutes) => minutes * SECONDS_PER_MINUTE)
const ROWS = 12

/** Water brought since dispatch, and the flow of the last ten minutes: achieved, planned, needed. */
export function FlowCharts({ review }: { review: LogReview }) {
  const [system] = useUnitSystem()
  const plots = useMemo(() => (review.curves.times_s.length > 1 ? plotsOf(review, system) : []), [review, system])
  return <div className={styles.charts}>{plots.map((plot) => <Plot key={plot.title} {...plot} />)}</div>
}

function plotsOf({ curves }: LogReview, system: UnitSystem): PlotProps[] {
  const { times_s, achieved_gal, planned_gal, needed_gal } = curves
  return [
    plot(say('review.chart.water'), times_s, [achieved_gal, planned_gal, needed_gal], 'gal', system),
    plot(say('review.chart.flow'), times_s, [achieved_gal, planned_gal, needed_gal].map((gal) => gal && lately_gpm(times_s, gal)), 'gpm', system),
  ]
}

const looks = [
  { key: 'review.achieved', colour: '--water', width: 3 },
  { key: 'review.planned', colour: '--ink', dash: [7, 4], width: 2 },
  { key: 'review.needed', colour: '--ink-quiet', dash: [2, 4], width: 2 },
] as const

function plot(title: string, times_s: readonly number[], all: readonly (readonly number[] | undefined)[], quantity: 'gal' | 'gpm', system: UnitSystem): PlotProps {
  const unit = displayUnit(quantity, system)
  const lines = looks.flatMap(({ key, ...look }, k) => {
    const values = all[k]
    return values ? [{ label: say(key), values: values.map((value) => value * unit.factor), given: values, ...look }] : []
  })
  const words = (value: number) => formatQuantity(value, quantity, system, { style: 'headline' })
  const every = Math.max(1, Math.ceil(times_s.length / ROWS))
  return {
    title, x: times_s, xWords: (time_s) => formatNumber(Math.round(time_s / SECONDS_PER_MINUTE)), xSteps: STEPS_S, xLabel: say('review.chart.minutes'), yLabel: unit.symbol,
    heard: say('review.chart.heard', { title, end: formatMinutes(times_s.at(-1) ?? 0), lines: lines.map(({ label, given }) => `${label} ${words(given.at(-1) ?? 0)}`).join(', ') }),
    lines: lines.map(({ given: _, ...line }) => line),
    table: {
      head: [say('review.chart.minutes'), ...lines.map(({ label }) => label)],
      rows: times_s.flatMap((time_s, t) => (t % every === 0 || t === times_s.length - 1 ? [[formatNumber(Math.round(time_s / SECONDS_PER_MINUTE)), ...lines.map(({ given }) => words(given[t] ?? 0))]] : [])),
    },
  }
}
