import type { Spot } from '../frame'
import { curveThrough, nearestOnLine, nearestOnSegment, resample, soften } from '../geometry/line'
import { gap, heading, offset } from '../geometry/spot'
import { noise, purpose } from './noise'
import { streamPlans, type StreamPlan, type ValleySpot } from './stream-plan'

export type Stream = StreamPlan & {
  /** Smooth middle of the valley, from source to mouth. */
  centre: readonly Spot[]
  /** Bed elevation and half width of the floor at each spot of `centre`. */
  bed_m: readonly number[]
  floor_m: readonly number[]
  /** Where the water runs. */
  water: readonly Spot[]
}

export function buildStreams(): Stream[] {
  const done = new Map<string, Stream>()
  streamPlans.forEach((plan, index) => done.set(plan.id, buildStream(plan, index, plan.into === undefined ? undefined : done.get(plan.into))))
  return [...done.values()]
}

function buildStream(plan: StreamPlan, index: number, main: Stream | undefined): Stream {
  const spots = plan.valley.map(([x, y]) => ({ x, y }))
  const centre = wandering(resample(curveThrough(spots), 40), index)
  const along = centre.map((here) => valleyAt(plan.valley, here))
  const water = centre.map((here, i) => {
    const ahead = heading(centre[Math.max(0, i - 1)]!, centre[Math.min(centre.length - 1, i + 1)]!)
    const fromEnd = Math.min(i, centre.length - 1 - i) * 40
    const taper = Math.min(1, fromEnd / 300)
    const s = i * 40
    const swing = noise(purpose.meander, s + index * 9000, 0, plan.wave_m) + 0.35 * noise(purpose.meander, s + index * 9000, 7000, plan.wave_m / 2.5)
    const room = along[i]![1] * 0.7
    return offset(here, ahead, 0, Math.max(-room, Math.min(room, swing * plan.meander_m)) * taper)
  })
  const flowing = resample(soften(resample(curveThrough(water, 4), 22), 4), 22)
  return { ...plan, centre, bed_m: along.map(([bed]) => bed), floor_m: along.map(([, floor]) => floor), water: main ? soften(joined(flowing, main), 2) : flowing }
}

/** Bends a valley as hills do; its ends stay where they were drawn. */
function wandering(line: readonly Spot[], index: number): Spot[] {
  return line.map((here, i) => {
    const ahead = heading(line[Math.max(0, i - 1)]!, line[Math.min(line.length - 1, i + 1)]!)
    const taper = Math.min(1, (Math.min(i, line.length - 1 - i) * 40) / 500)
    const s = i * 40 + index * 9000
    return offset(here, ahead, 0, taper * (230 * noise(purpose.meander, s, 3000, 1100) + 90 * noise(purpose.meander, s, 5000, 420)))
  })
}

/** Bed and floor at the valley's nearest place, by the control spots on either side. */
function valleyAt(valley: readonly ValleySpot[], here: Spot): [bed: number, floor: number] {
  let best: { away: number; bed: number; floor: number } = { away: Infinity, bed: 0, floor: 0 }
  for (let i = 0; i < valley.length - 1; i++) {
    const [a, b] = [valley[i]!, valley[i + 1]!]
    const { spot, share } = nearestOnSegment({ x: a[0], y: a[1] }, { x: b[0], y: b[1] }, here)
    const away = gap(spot, here)
    if (away < best.away) best = { away, bed: a[2] + (b[2] - a[2]) * share, floor: a[3] + (b[3] - a[3]) * share }
  }
  return [best.bed, best.floor]
}

/** Ends the stream on a spot of the stream it flows into, a little downstream, as waters meet. */
function joined(flowing: readonly Spot[], main: Stream): Spot[] {
  const first = flowing.findIndex((here) => nearestOnLine(main.water, here).away < 70)
  const kept = flowing.slice(0, first < 0 ? flowing.length : Math.max(2, first))
  const { segment } = nearestOnLine(main.water, kept[kept.length - 1]!)
  const mouth = main.water[Math.min(main.water.length - 1, segment + 2)]!
  return [...kept, mouth]
}
