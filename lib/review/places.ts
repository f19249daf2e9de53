import type { Stay } from './marks'

/** One stay at a place that few can use at once. */
export type Turn = { readonly arrived_s: number; readonly taken_s: number; readonly left_s: number | undefined }

/** The turn of a stay; undefined while nobody knows when it came or took its place. */
export function turnOf({ place, times_s: { arrived, dumping, hookedUp, left } }: Stay): Turn | undefined {
  const taken_s = place === 'dump' ? dumping : hookedUp
  return arrived === undefined || taken_s === undefined ? undefined : { arrived_s: arrived, taken_s, left_s: left }
}

/**
 * How long each waited for a place, first come first served: until as many were left as there are places. Whatever else
 * passed before it was in its place is taking the place.
 *
 * @param placeCount places of the site; Infinity: nobody waits for one
 * @param ready_s    no place is free before; waiting for that alone counts as none
 * @returns from arrival to its turn, where somebody was in its way, else 0; in the order of `turns`. [s]
 */
export function waitsFor_s(turns: readonly Turn[], placeCount: number, ready_s: number): number[] {
  const waits_s = turns.map(() => 0)
  if (!Number.isFinite(placeCount)) return waits_s
  const free_s = Array<number>(placeCount).fill(ready_s)
  const order = turns.map((_, k) => k).sort((a, b) => turns[a]!.arrived_s - turns[b]!.arrived_s || turns[a]!.taken_s - turns[b]!.taken_s)
  for (const k of order) {
    const { arrived_s, taken_s, left_s } = turns[k]!
    const place = free_s.indexOf(Math.min(...free_s))
    const start_s = Math.min(taken_s, Math.max(arrived_s, free_s[place]!))
    if (start_s > Math.max(arrived_s, ready_s)) waits_s[k] = start_s - arrived_s
    free_s[place] = left_s ?? Infinity
  }
  return waits_s
}

/** Longer than this beyond its usual time and the first to come has waited for the site itself. Assumed. */
const READY_MARGIN_S = 30

/**
 * When a site was ready, by the first tender served there: it had no one before it, so what it stood beyond its usual
 * time was waiting for the site. One served at once finds the site ready, at the latest when it came.
 *
 * @param planned_s when the plan has it ready
 */
export function readyAt_s(turns: readonly Turn[], usual_s: number, planned_s: number): number {
  if (turns.length === 0) return planned_s
  const first = turns.reduce((a, b) => (b.taken_s < a.taken_s ? b : a))
  return first.taken_s - first.arrived_s > usual_s + READY_MARGIN_S ? Math.max(0, first.taken_s - usual_s) : Math.max(0, Math.min(planned_s, first.arrived_s))
}
