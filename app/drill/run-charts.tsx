'use client'

import { useCallback } from 'react'
import uPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { columnOf, movementsOf, type Drill, type Movement } from '@/lib/priming/drill'
import { inchesOfMercuryFromFeetOfWater } from '@/lib/units'
import { DARK, plotLook, useLinePlot } from '../_charts/use-line-plot'
import { displayUnit, formatClock, formatTime, say, type UnitSystem } from '../_text'
import '../_text/areas/drill'
import { useUnitSystem } from '../_ui/unit-system-context'
import { leverFromOpening, leverNames } from './lever'
import styles from './run-charts.module.css'

type Line = { readonly label: string; readonly values: Float64Array; readonly colour: string; readonly dash?: number[]; readonly scale?: string; readonly digits: number }
type Chart = { readonly title: string; readonly lines: readonly Line[]; readonly scales: uPlot.Scales; readonly axes: readonly { scale: string; label: string; side: 1 | 3 }[] }

const dashes: readonly number[][] = [[], [8, 4], [2, 3], [10, 3, 2, 3], [4, 4]]
const share = (values: Float64Array): Float64Array => values.map((value) => value * 100)
/** The vacuum's side of the chart shows no less than this: a run with none is a line at nothing. */
const LEAST_INHG = 10
const PERCENT: uPlot.Scales = { y: { range: [0, 100] } }

function chartsOf(drill: Drill, system: UnitSystem): readonly Chart[] {
  const { record } = drill
  const psi = displayUnit('psi', system)
  const inHg = displayUnit('inHg', system)
  const perCent = [{ scale: 'y', label: '%', side: 3 as const }]
  return [
    {
      title: say('drill.chart.pressure'),
      scales: { y: {}, v: { range: (_, __, most) => [0, Math.max(most * 1.05, LEAST_INHG * inHg.factor)] } },
      axes: [{ scale: 'y', label: psi.symbol, side: 3 }, { scale: 'v', label: inHg.symbol, side: 1 }],
      lines: [
        { label: say('drill.series.discharge'), values: columnOf(record, 'discharge_psi').map((value) => value * psi.factor), colour: '--ink', digits: 0 },
        { label: say('drill.series.vacuum'), values: columnOf(record, 'eyeVacuum_ft').map((value) => inchesOfMercuryFromFeetOfWater(value) * inHg.factor), colour: '--water', dash: dashes[1], scale: 'v', digits: 1 },
      ],
    },
    {
      title: say('drill.chart.levels'), scales: PERCENT, axes: perCent,
      lines: [
        { label: say('drill.series.tank'), values: share(columnOf(record, 'tankShare')), colour: '--water', digits: 0 },
        { label: say('drill.series.column'), values: share(columnOf(record, 'columnShare')), colour: '--water', dash: dashes[1], digits: 0 },
        { label: say('drill.series.gas'), values: share(columnOf(record, 'gasShare')), colour: '--ink', dash: dashes[2], digits: 1 },
      ],
    },
    {
      title: say('drill.chart.controls'), scales: PERCENT, axes: perCent,
      lines: leverNames.map((lever, index) => ({
        label: say(`drill.control.${lever}`), values: share(columnOf(record, lever).map((opening) => leverFromOpening(lever, opening))), colour: index % 2 ? '--ink-quiet' : '--ink',
        dash: dashes[index], digits: 0,
      })),
    },
  ]
}

/** The run's gauges over time, with a numbered line for each movement of the hand. */
export function RunCharts({ drill }: { drill: Drill }) {
  const [system] = useUnitSystem()
  const movements = movementsOf(drill.scenario.controls, drill.moves)
  return (
    <div className={styles.charts}>
      {chartsOf(drill, system).map((chart) => <OneChart key={chart.title} drill={drill} chart={chart} movements={movements} />)}
    </div>
  )
}

function OneChart({ drill, chart, movements }: { drill: Drill; chart: Chart; movements: readonly Movement[] }) {
  const make = useCallback((element: HTMLElement) => new uPlot(optionsOf(element, chart, movements), [columnOf(drill.record, 'time_s'), ...chart.lines.map(({ values }) => values)], element), [drill, chart, movements])
  const holder = useLinePlot(make, HEIGHT, WISHES)
  return (
    <figure className={styles.chart}>
      <figcaption className={styles.title}>{chart.title}</figcaption>
      <div ref={holder} role="img" aria-label={say('drill.chart.heard', { title: chart.title, time: formatTime(drill.state.time_s) })} />
      <ul className={styles.legend} aria-hidden="true">
        {chart.lines.map(({ label, colour, dash }) => (
          <li key={label}>
            <svg width="26" height="8"><line x1="0" y1="4" x2="26" y2="4" stroke={`var(${colour})`} strokeWidth="2" strokeDasharray={dash?.join(' ')} /></svg>
            {label}
          </li>
        ))}
      </ul>
    </figure>
  )
}

const HEIGHT = 190
const WISHES = [DARK]
const RIGHT_AXIS_PX = 58
/** Steps of the clock; no two marks say the same second. */
const STEPS_S = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600]

function optionsOf(element: HTMLElement, chart: Chart, movements: readonly Movement[]): uPlot.Options {
  const { colour, font, axis } = plotLook(element)
  return {
    width: element.clientWidth,
    height: HEIGHT,
    // Charts without a right-hand axis end where those with one do.
    padding: [14, chart.axes.length > 1 ? 0 : RIGHT_AXIS_PX, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false }, ...chart.scales },
    axes: [
      { ...axis, incrs: STEPS_S, values: (_, splits) => splits.map(formatClock) },
      ...chart.axes.map(({ scale, label, side }) => ({ ...axis, scale, side, label, labelSize: 18, size: 40, grid: side === 3 ? axis.grid : { show: false } })),
    ],
    series: [{}, ...chart.lines.map((line) => ({ scale: line.scale ?? 'y', stroke: colour(line.colour), width: 2, dash: line.dash, points: { show: false } }))],
    hooks: { draw: [(plot) => { drawMovements(plot, movements, colour('--amber'), font) }] },
  }
}

/** A thin line at the start of each movement, its number above; numbers that would lie on each other are left out. */
function drawMovements(plot: uPlot, movements: readonly Movement[], colour: string, font: string): void {
  const { ctx, bbox } = plot
  const ratio = window.devicePixelRatio || 1
  ctx.save()
  ctx.strokeStyle = colour
  ctx.fillStyle = colour
  ctx.font = font.replace('12px', `${11 * ratio}px`)
  ctx.textAlign = 'center'
  ctx.globalAlpha = 0.8
  ctx.lineWidth = ratio
  let lastX = -Infinity
  movements.forEach(({ start_s }, index) => {
    const x = plot.valToPos(start_s, 'x', true)
    ctx.beginPath()
    ctx.moveTo(x, bbox.top)
    ctx.lineTo(x, bbox.top + bbox.height)
    ctx.stroke()
    if (x - lastX < 16 * ratio) return
    ctx.fillText(String(index + 1), x, bbox.top - 3 * ratio)
    lastX = x
  })
  ctx.restore()
}
