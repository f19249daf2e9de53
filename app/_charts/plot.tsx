'use client'

import { useCallback, useId } from 'react'
import uPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { say } from '../_text'
import styles from './plot.module.css'
import { DARK, plotLook, useLinePlot } from './use-line-plot'

export type PlotLine = {
  readonly label: string
  readonly values: readonly number[]
  readonly colour: '--ink' | '--ink-quiet' | '--water' | '--danger'
  readonly dash?: readonly number[]
  readonly width?: number
}

export type PlotProps = {
  readonly title: string
  /** What the picture shows, for those who hear it. */
  readonly heard: string
  readonly x: readonly number[]
  readonly xWords: (value: number) => string
  readonly xLabel: string
  /** Steps between its ticks, smallest first. */
  readonly xSteps?: readonly number[]
  readonly yLabel: string
  /** Share of 1 to show up to; absent: from 0 to what is there. */
  readonly yTop?: number
  readonly lines: readonly PlotLine[]
  /** The room between the first and the second line is filled; what comes after lies on it. */
  readonly isBand?: boolean
  /** Upright lines, each with its word above. */
  readonly marks?: readonly { readonly x: number; readonly label: string }[]
  /** The same as a table: the rows worth reading. */
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
}

const HEIGHT = 220
/** Paper has colours of its own. */
const WISHES = [DARK, 'print']

/** A chart in the look of the app: drawn anew for another theme, another width and paper; its figures also stand in a table. */
export function Plot(props: PlotProps) {
  const { title, heard, lines, table } = props
  const tableId = useId()
  const make = useCallback((element: HTMLElement) => new uPlot(optionsOf(element, props), [[...props.x], ...props.lines.map(({ values }) => [...values])] as uPlot.AlignedData, element), [props])
  const holder = useLinePlot(make, HEIGHT, WISHES)
  return (
    <figure className={styles.plot}>
      <figcaption className={styles.plotTitle}>{title}</figcaption>
      <div ref={holder} role="img" aria-label={heard} aria-describedby={tableId} />
      {lines.length > 1 && (
        <ul className={styles.legend} aria-hidden="true">
          {lines.map(({ label, colour, dash, width = 2 }) => (
            <li key={label}>
              <svg width="26" height="8"><line x1="0" y1="4" x2="26" y2="4" stroke={`var(${colour})`} strokeWidth={width} strokeDasharray={dash?.join(' ')} /></svg>
              {label}
            </li>
          ))}
        </ul>
      )}
      <details className={styles.details}>
        <summary>{say('doubt.as-table')}</summary>
        <div className={styles.scroller} tabIndex={0} role="region" aria-label={title}>
          <table id={tableId} className={styles.table}>
            <thead><tr>{table.head.map((word) => <th key={word} scope="col">{word}</th>)}</tr></thead>
            <tbody>
              {table.rows.map(([first = '', ...rest]) => (
                <tr key={first}><th scope="row">{first}</th>{rest.map((cell, index) => <td key={table.head[index + 1]}>{cell}</td>)}</tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  )
}

function optionsOf(element: HTMLElement, { x, xWords, xLabel, xSteps, yLabel, yTop, lines, isBand = false, marks = [] }: PlotProps): uPlot.Options {
  const { colour, font, axis } = plotLook(element)
  return {
    width: element.clientWidth,
    height: HEIGHT,
    padding: [10, 16, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, range: [x[0] ?? 0, x[x.length - 1] ?? 1] },
      y: { range: yTop === undefined ? (_, __, most) => [0, Math.max(1e-9, most * 1.05)] : [0, yTop] },
    },
    axes: [
      { ...axis, values: (_, splits) => splits.map(xWords), label: xLabel, labelSize: 20, size: 30, space: 56, ...(xSteps && { incrs: [...xSteps] }) },
      { ...axis, label: yLabel, labelSize: 20, size: 60 },
    ],
    ...(isBand && { bands: [{ series: [2, 1], fill: colour('--water-soft') }] }),
    series: [{}, ...lines.map((line) => ({ stroke: colour(line.colour), width: line.width ?? 2, ...(line.dash && { dash: [...line.dash] }), points: { show: false } }))],
    hooks: { draw: [(plot) => { drawMarks(plot, marks, colour('--ink'), colour('--sheet'), font) }] },
  }
}

/** Upright lines, then their words a row each, turned to the side that has room. */
function drawMarks(plot: uPlot, marks: NonNullable<PlotProps['marks']>, colour: string, ground: string, font: string): void {
  const { ctx, bbox } = plot
  const ratio = window.devicePixelRatio || 1
  ctx.save()
  ctx.strokeStyle = colour
  ctx.lineWidth = ratio
  ctx.font = font.replace('12px', `${12 * ratio}px`)
  ctx.textBaseline = 'middle'
  ctx.setLineDash([4 * ratio, 3 * ratio])
  const placed = marks.map(({ x, label }) => ({ at: plot.valToPos(x, 'x', true), label })).filter(({ at }) => at >= bbox.left - 1 && at <= bbox.left + bbox.width + 1)
  for (const { at } of placed) {
    ctx.beginPath()
    ctx.moveTo(at, bbox.top)
    ctx.lineTo(at, bbox.top + bbox.height)
    ctx.stroke()
  }
  placed.sort((a, b) => a.at - b.at).forEach(({ at, label }, row) => {
    const isRight = at > bbox.left + bbox.width * 0.6
    const width = ctx.measureText(label).width + 8 * ratio
    const left = isRight ? at - width - ratio : at + ratio
    const middle = bbox.top + (40 + row * 20) * ratio
    ctx.fillStyle = ground
    ctx.fillRect(left, middle - 9 * ratio, width, 18 * ratio)
    ctx.fillStyle = colour
    ctx.textAlign = 'left'
    ctx.fillText(label, left + 4 * ratio, middle)
  })
  ctx.restore()
}
