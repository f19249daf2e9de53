import type { ChartLine } from './chart-lines'
import { widthOf } from './start-marks'

/** A line's short name on the line itself. */
export type StringLabel = { readonly id: string; readonly words: string; readonly x: number; readonly share: number }

/** Height of a line of the chart's 12 px type, as a part of the road's height. */
const HEIGHT_SHARE = 0.11
/** From one label of a line to its next. */
const EVERY_PX = 80
/** Where along a drive a label is tried, its middle first. */
const tried = [0.5, 0.35, 0.65, 0.22, 0.78]

/**
 * Where each line is named while it is between the sites, so that lines are told apart without their dashes: on its drives, over no other
 * name. A drive where there is no room is not named.
 *
 * @param x place of a time, in px
 */
export function stringLabels(lines: readonly ChartLine[], end_s: number, x: (time_s: number) => number): StringLabel[] {
  const labels: StringLabel[] = []
  const isFree = (words: string, at: { x: number; share: number }) =>
    labels.every((one) => Math.abs(one.share - at.share) > HEIGHT_SHARE || Math.abs(one.x - at.x) > (widthOf(one.words) + widthOf(words)) / 2 + 4)
  for (const { id, letter, points } of lines) {
    let last = -Infinity
    points.forEach((from, k) => {
      const to = points[k + 1]
      if (!to || to.share === from.share) return
      const places = tried.map((part) => ({ time_s: from.time_s + part * (to.time_s - from.time_s), share: from.share + part * (to.share - from.share) }))
      const place = places.filter(({ time_s }) => time_s < end_s).map(({ time_s, share }) => ({ x: x(time_s), share })).find((at) => at.x - last >= EVERY_PX && isFree(letter, at))
      if (!place) return
      last = place.x
      labels.push({ id, words: letter, ...place })
    })
  }
  return labels
}
