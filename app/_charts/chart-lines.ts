import type { SupplyChart } from '@/lib/supply'

/** A tender's line: 0 is the dump site, 1 the fill site. */
export type ChartLine = {
  id: string
  /** What it goes by, short. */
  letter: string
  dash: string | undefined
  points: { time_s: number; share: number }[]
  waits: { from_s: number; to_s: number; share: number }[]
}

/** Told apart without colour. */
const dashes = [undefined, '8 4', '2 3', '10 3 2 3', '18 5', '9 3 2 3 2 3', '1 6', '4 2 4 9']

/**
 * Where a tender is on its road: at the dump until it leaves, at the fill until it leaves, between while it drives. A
 * wait at a one-lane stretch is flat, as far along as the part of the leg's driving that lies behind it.
 *
 * @param marks short names by id; a line without one has its place in the list
 */
export function linesOf({ tenders }: Pick<SupplyChart, 'tenders'>, marks?: ReadonlyMap<string, string>): ChartLine[] {
  return tenders.map(({ id, segments }, index) => {
    const points: ChartLine['points'] = []
    const waits: ChartLine['waits'] = []
    for (let k = 0; k < segments.length; k++) {
      const leg = legFrom(segments, k)
      if (leg.length > 0) {
        const [from, to] = leg[0]?.phase === 'drives-to-dump' ? [1, 0] : [0, 1]
        const driving_s = leg.reduce((sum, one) => sum + (isDriving(one.phase) ? one.to_s - one.from_s : 0), 0)
        let driven_s = 0
        for (const { phase, from_s, to_s } of leg) {
          const before = from + (to - from) * (driven_s / driving_s)
          if (isDriving(phase)) driven_s += to_s - from_s
          else waits.push({ from_s, to_s, share: before })
          points.push({ time_s: from_s, share: before }, { time_s: to_s, share: from + (to - from) * (driven_s / driving_s) })
        }
        k += leg.length - 1
        continue
      }
      const { phase, from_s, to_s } = segments[k]!
      const share = isAtFill(phase) ? 1 : 0
      points.push({ time_s: from_s, share }, { time_s: to_s, share })
      if (phase.startsWith('waits')) waits.push({ from_s, to_s, share })
    }
    return { id, points, waits, letter: marks?.get(id) ?? String(index + 1), dash: dashes[index % dashes.length] }
  })
}

type Segments = SupplyChart['tenders'][number]['segments']

/** The segments of the leg that begins at `from`: driving, and waiting on the road in between; none when it does not drive then. */
function legFrom(segments: Segments, from: number): Segments {
  const phase = segments[from]?.phase
  if (!phase || !isDriving(phase)) return []
  let upTo = from + 1
  while (segments[upTo]?.phase === 'waits-at-road' || (upTo > from + 1 && segments[upTo]?.phase === phase)) upTo++
  return segments.slice(from, upTo)
}

const isDriving = (phase: string): boolean => phase === 'drives-to-fill' || phase === 'drives-to-dump'

const isAtFill = (phase: string): boolean =>
  phase === 'waits-to-fill' || phase === 'takes-bay' || phase === 'waits-in-bay' || phase === 'fills' || phase === 'clears-bay'

/** Path of a line up to a time; a drive that goes on past it is cut there. */
export function pathOf(points: ChartLine['points'], end_s: number, x: (time_s: number) => number, y: (share: number) => number): string {
  let path = ''
  for (const [index, point] of points.entries()) {
    const before = points[index - 1]
    if (point.time_s > end_s) {
      if (before && before.time_s < end_s) {
        const share = before.share + ((point.share - before.share) * (end_s - before.time_s)) / (point.time_s - before.time_s)
        path += `L${x(end_s).toFixed(1)} ${y(share).toFixed(1)}`
      }
      break
    }
    path += `${path === '' ? 'M' : 'L'}${x(point.time_s).toFixed(1)} ${y(point.share).toFixed(1)}`
  }
  return path
}

/** Area under a tank's level up to a time. */
export function tankArea(levels: SupplyChart['tanks'][number]['levels'], end_s: number, x: (time_s: number) => number, level: (gal: number) => number, floor: number): string {
  const first = levels[0]
  if (!first) return ''
  const shown = levels.filter(({ time_s }) => time_s <= end_s)
  const last = shown.at(-1) ?? first
  const next = levels[shown.length]
  const line = shown.map(({ time_s, level_gal }) => `L${x(time_s).toFixed(1)} ${level(level_gal).toFixed(1)}`).join('')
  const atEnd = next ? last.level_gal + ((next.level_gal - last.level_gal) * (end_s - last.time_s)) / (next.time_s - last.time_s) : last.level_gal
  const tail = `L${x(end_s).toFixed(1)} ${level(atEnd).toFixed(1)}`
  return `M${x(first.time_s).toFixed(1)} ${floor}${line}${tail}L${x(end_s).toFixed(1)} ${floor}Z`
}

/** Minutes to mark: as many as stand apart. */
export function minuteMarks(end_s: number, plot: number): number[] {
  const step_min = [1, 2, 5, 10, 15, 20, 30, 60].find((minutes) => (minutes * 60 * plot) / end_s >= 56) ?? 120
  return Array.from({ length: Math.floor(end_s / (step_min * 60)) + 1 }, (_, index) => index * step_min * 60)
}
