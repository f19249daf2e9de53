'use client'

import { useMemo } from 'react'
import type { Band, DoubtAnswer } from '@/lib/doubt'
import { SECONDS_PER_MINUTE, type Unit } from '@/lib/units'
import { Plot, type PlotProps } from '../_charts/plot'
import { displayUnit, formatAsked, formatGiven, formatMinutes, formatNumber, formatQuantity, formatShare, say, type NameOf, type UnitSystem } from '../_text'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './doubt.module.css'

const TABLE_STEP_S = 15 * SECONDS_PER_MINUTE
const MINUTE_STEPS_S = [1, 2, 5, 10, 15, 20, 30, 60, 120].map((minutes) => minutes * SECONDS_PER_MINUTE)
const minutesOf = (time_s: number): string => formatNumber(Math.round(time_s / SECONDS_PER_MINUTE))
const PERCENT_TOP = 100

/** The nights as pictures: flow, tanks, water given, and the chance of going short. */
export function DoubtCharts({ answer, needed_gpm, names }: { answer: DoubtAnswer; needed_gpm: number | null; names: NameOf }) {
  const [system] = useUnitSystem()
  const plots = useMemo(() => plotsOf(answer, needed_gpm, names, system), [answer, needed_gpm, names, system])
  return <div className={styles.charts}>{plots.map((plot) => <Plot key={plot.title} {...plot} />)}</div>
}

function plotsOf(answer: DoubtAnswer, needed_gpm: number | null, names: NameOf, system: UnitSystem): PlotProps[] {
  return [
    flowPlot(answer, needed_gpm, system),
    ...(answer.planned ? [chancePlot(answer, answer.planned)] : []),
    ...answer.tanks.map(({ siteId, level_gal }) => bandPlot(say('doubt.chart.tank', { site: names(siteId) ?? siteId }), answer.times_s, level_gal, system)),
    bandPlot(say('doubt.chart.delivered'), answer.times_s, answer.delivered_gal, system),
  ]
}

/** Part of the nights that hold a flow, over the flow. */
function flowPlot({ flows_gpm, dependable, expected_gpm }: DoubtAnswer, needed_gpm: number | null, system: UnitSystem): PlotProps {
  const unit = displayUnit('gpm', system)
  const count = flows_gpm.length
  const top_gpm = 1.05 * Math.max(flows_gpm[count - 1] ?? 0, expected_gpm, needed_gpm ?? 0, 1)
  const heldShare = (flow_gpm: number) => flows_gpm.filter((flow) => flow >= flow_gpm).length / count
  const asked = Array.from({ length: 121 }, (_, index) => (top_gpm * index) / 120)
  const flow = (value: number) => formatGiven(value, system, needed_gpm)
  const marks = [
    { x: dependable.flow_gpm, label: say('doubt.mark.dependable', { flow: flow(dependable.flow_gpm) }) },
    { x: expected_gpm, label: say('doubt.mark.expected', { flow: flow(expected_gpm) }) },
    ...(needed_gpm === null ? [] : [{ x: needed_gpm, label: say('doubt.mark.needed', { flow: formatAsked(needed_gpm, system) }) }]),
  ]
  return {
    title: say('doubt.chart.flow'),
    heard: say('doubt.chart.flow.heard', { share: formatShare(dependable.share), flow: flow(dependable.flow_gpm), low: flow(flows_gpm[0] ?? 0), high: flow(flows_gpm[count - 1] ?? 0) }),
    x: asked.map((value) => value * unit.factor), xWords: (value) => formatNumber(value), xLabel: unit.symbol, yLabel: say('doubt.axis.nights'), yTop: PERCENT_TOP,
    lines: [{ label: say('doubt.chart.flow'), values: asked.map((value) => 100 * heldShare(value)), colour: '--water' }],
    marks: marks.map(({ x, label }) => ({ x: x * unit.factor, label })),
    table: {
      head: [say('doubt.axis.flow'), say('doubt.axis.nights')],
      rows: [0.99, 0.95, 0.9, 0.75, 0.5, 0.25, 0.1].map((share) => [flow(flows_gpm[Math.min(count - 1, Math.floor(count * (1 - share)))] ?? 0), formatShare(share)]),
    },
  }
}

function chancePlot({ times_s }: DoubtAnswer, { shortShare, failedShare }: NonNullable<DoubtAnswer['planned']>): PlotProps {
  return {
    title: say('doubt.chart.chance'),
    heard: say('doubt.chart.chance.heard', { share: formatShare(failedShare.at(-1) ?? 0), time: formatMinutes(times_s.at(-1) ?? 0) }),
    x: times_s, xWords: minutesOf, xSteps: MINUTE_STEPS_S, xLabel: say('doubt.axis.minutes'), yLabel: say('doubt.axis.nights'), yTop: PERCENT_TOP,
    lines: [
      { label: say('doubt.line.failed'), values: failedShare.map((share) => 100 * share), colour: '--danger' },
      { label: say('doubt.line.short'), values: shortShare.map((share) => 100 * share), colour: '--ink', dash: [2, 3] },
    ],
    table: {
      head: [say('doubt.axis.minutes'), say('doubt.line.failed'), say('doubt.line.short')],
      rows: tableLooks(times_s).map((t) => [minutesOf(times_s[t]!), formatShare(failedShare[t]!), formatShare(shortShare[t]!)]),
    },
  }
}

function bandPlot(title: string, times_s: readonly number[], { low, middle, high }: Band, system: UnitSystem): PlotProps {
  const quantity: Unit = 'gal'
  const unit = displayUnit(quantity, system)
  const shown = (values: readonly number[]) => values.map((value) => value * unit.factor)
  const words = (value: number) => formatQuantity(value, quantity, system)
  return {
    title,
    heard: bandWords(title, formatMinutes(times_s.at(-1) ?? 0), words(low.at(-1) ?? 0), words(high.at(-1) ?? 0)),
    x: times_s, xWords: minutesOf, xSteps: MINUTE_STEPS_S, xLabel: say('doubt.axis.minutes'), yLabel: unit.symbol, isBand: true,
    lines: [
      { label: say('doubt.line.low'), values: shown(low), colour: '--water', width: 1, dash: [8, 4] },
      { label: say('doubt.line.high'), values: shown(high), colour: '--water', width: 1, dash: [2, 3] },
      { label: say('doubt.line.middle'), values: shown(middle), colour: '--water' },
    ],
    table: {
      head: [say('doubt.axis.minutes'), say('doubt.line.low'), say('doubt.line.middle'), say('doubt.line.high')],
      rows: tableLooks(times_s).map((t) => [minutesOf(times_s[t]!), words(low[t]!), words(middle[t]!), words(high[t]!)]),
    },
  }
}

/** A band without a width is one number. */
const bandWords = (title: string, time: string, low: string, high: string): string =>
  low === high ? say('doubt.chart.band.heard.one', { title, time, high }) : say('doubt.chart.band.heard', { title, time, low, high })

const tableLooks = (times_s: readonly number[]): number[] =>
  times_s.flatMap((time_s, t) => (time_s % TABLE_STEP_S === 0 || t === times_s.length - 1 ? [t] : []))
