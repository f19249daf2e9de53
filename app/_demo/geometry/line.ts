import type { Spot } from '../frame'
import { between, gap } from './spot'

export type Line = readonly Spot[]

export function lineLength(line: Line): number {
  let total = 0
  for (let i = 1; i < line.length; i++) total += gap(line[i - 1]!, line[i]!)
  return total
}

/** Curve through the control spots (Catmull–Rom), `steps` pieces a span. */
export function curveThrough(controls: Line, steps = 12): Spot[] {
  if (controls.length < 3) return [...controls]
  const at = (i: number): Spot => controls[Math.max(0, Math.min(controls.length - 1, i))]!
  const curve: Spot[] = []
  for (let i = 0; i < controls.length - 1; i++) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)]
    for (let k = 0; k < steps; k++) {
      const t = k / steps
      const mix = (p: number, q: number, r: number, s: number): number =>
        0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t * t + (3 * q - p - 3 * r + s) * t * t * t)
      curve.push({ x: mix(a.x, b.x, c.x, d.x), y: mix(a.y, b.y, c.y, d.y) })
    }
  }
  curve.push(at(controls.length - 1))
  return curve
}

/** The same line with a spot about every `step` metres; both ends stay. */
export function resample(line: Line, step: number): Spot[] {
  const total = lineLength(line)
  const count = Math.max(1, Math.round(total / step))
  const spots: Spot[] = [line[0]!]
  let segment = 1
  let passed = 0
  for (let k = 1; k < count; k++) {
    const target = (total * k) / count
    while (segment < line.length - 1 && passed + gap(line[segment - 1]!, line[segment]!) < target) {
      passed += gap(line[segment - 1]!, line[segment]!)
      segment++
    }
    const length = gap(line[segment - 1]!, line[segment]!)
    spots.push(between(line[segment - 1]!, line[segment]!, length > 0 ? (target - passed) / length : 0))
  }
  spots.push(line[line.length - 1]!)
  return spots
}

/** Pulls each spot toward the middle of its neighbours, `rounds` times; both ends stay. */
export function soften(line: Line, rounds: number): Spot[] {
  let now = [...line]
  for (let round = 0; round < rounds; round++)
    now = now.map((here, i) => (i === 0 || i === now.length - 1 ? here : between(here, between(now[i - 1]!, now[i + 1]!, 0.5), 0.5)))
  return now
}

/** Drops spots that lie within `tolerance` metres of the line without them (Douglas–Peucker). */
export function simplify(line: Line, tolerance: number): Spot[] {
  if (line.length < 3) return [...line]
  const keep = new Uint8Array(line.length)
  keep[0] = keep[line.length - 1] = 1
  const spans: [number, number][] = [[0, line.length - 1]]
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span
    let worst = tolerance
    let at = -1
    for (let i = from + 1; i < to; i++) {
      const away = gap(line[i]!, nearestOnSegment(line[from]!, line[to]!, line[i]!).spot)
      if (away > worst) [worst, at] = [away, i]
    }
    if (at > 0) {
      keep[at] = 1
      spans.push([from, at], [at, to])
    }
  }
  return line.filter((_, i) => keep[i] === 1)
}

export function nearestOnSegment(a: Spot, b: Spot, to: Spot): { spot: Spot; share: number } {
  const length2 = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
  const share = length2 > 0 ? Math.max(0, Math.min(1, ((to.x - a.x) * (b.x - a.x) + (to.y - a.y) * (b.y - a.y)) / length2)) : 0
  return { spot: between(a, b, share), share }
}

export type OnLine = { spot: Spot; away: number; segment: number; share: number }

/** Nearest place on the line: `segment` i runs from spot i to spot i + 1. */
export function nearestOnLine(line: Line, to: Spot): OnLine {
  let best: OnLine = { spot: line[0]!, away: gap(line[0]!, to), segment: 0, share: 0 }
  for (let i = 0; i < line.length - 1; i++) {
    const { spot, share } = nearestOnSegment(line[i]!, line[i + 1]!, to)
    const away = gap(spot, to)
    if (away < best.away) best = { spot, away, segment: i, share }
  }
  return best
}

/** Where two segments cross, as shares along each, or undefined. */
export function findCrossing(a: Spot, b: Spot, c: Spot, d: Spot): { spot: Spot; ab: number; cd: number } | undefined {
  if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.max(c.x, d.x) < Math.min(a.x, b.x)) return undefined
  if (Math.max(a.y, b.y) < Math.min(c.y, d.y) || Math.max(c.y, d.y) < Math.min(a.y, b.y)) return undefined
  const det = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)
  if (Math.abs(det) < 1e-9) return undefined
  const ab = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / det
  const cd = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / det
  return ab >= 0 && ab <= 1 && cd >= 0 && cd <= 1 ? { spot: between(a, b, ab), ab, cd } : undefined
}
