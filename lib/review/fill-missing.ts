import { tenderSteps } from '../field-log'
import type { NoteAssumption } from './assumption'
import { stageUpTo, type Mark, type Stay, type TripTimes } from './marks'

type Node = { readonly stay: Stay; readonly mark: Mark; readonly usual_s: number }

/**
 * Gives every mark of a tender's stays, from its first to its last that was logged, a time.
 *
 * Marks that nobody logged, between two that somebody did, share the time between those: within one stay each takes its
 * usual time counted from the later one, and what is left over is waiting; across a drive, or where there is too little time, all are
 * stretched alike. Before the first that was logged the usual
 * times are taken. After the last nothing is: whoever was seen to arrive may still have stood there when the log ended.
 *
 * @param stays changed in place
 * @param quiet marks that are not told one by one, by `place/mark`
 */
export function fillMissing(stays: readonly Stay[], usual: TripTimes, apparatusId: string, quiet: ReadonlySet<string>, note: NoteAssumption): void {
  const chain = stays.flatMap((stay) => (tenderSteps[stay.place] as readonly Mark[]).map((mark): Node => ({ stay, mark, usual_s: usualUpTo_s(stay, mark, usual) })))
  const known = chain.flatMap(({ stay, mark }, k) => (mark in stay.times_s ? [k] : []))
  const first = known[0]
  if (first === undefined) return
  const timeAt = (k: number): number => chain[k]!.stay.times_s[chain[k]!.mark]!
  const takeTime = (k: number, at_s: number, basis: 'between' | 'usual'): void => {
    const { stay, mark } = chain[k]!
    stay.times_s[mark] = at_s
    if (stay.eventIds.length > 0 && !quiet.has(`${stay.place}/${mark}`)) note({ kind: 'missing', apparatusId, place: stay.place, siteId: stay.siteId, mark, at_s, basis, eventIds: [] })
  }
  for (let k = first - 1; k >= 0; k--) takeTime(k, timeAt(k + 1) - chain[k + 1]!.usual_s, 'usual')
  for (const [n, from] of known.entries()) {
    const upTo = known[n + 1]
    if (upTo === undefined || upTo === from + 1) continue
    const usual_s = chain.slice(from + 1, upTo + 1).map((node) => node.usual_s)
    const sum_s = usual_s.reduce((sum, one) => sum + one, 0)
    const whole_s = timeAt(upTo) - timeAt(from)
    const isOneStay = chain[from]!.stay === chain[upTo]!.stay
    const isLoose = isOneStay && whole_s >= sum_s
    let at_s = timeAt(from) + (isLoose ? whole_s - sum_s : 0)
    for (let k = from + 1; k < upTo; k++) {
      const own_s = usual_s[k - from - 1]!
      at_s += isLoose ? own_s : sum_s > 0 ? (whole_s * own_s) / sum_s : 0
      takeTime(k, at_s, 'between')
    }
  }
  for (const { eventIds, place, times_s } of stays) {
    if (eventIds.length === 0) note({ kind: 'missing-stay', apparatusId, place, at_s: times_s.arrived, basis: 'between', eventIds: [] })
  }
}

/** Usual time from the mark before to this one: a stage, the road before an arrival, nothing while it stands hooked up. */
function usualUpTo_s({ place }: Stay, mark: Mark, usual: TripTimes): number {
  if (mark === 'arrived') return place === 'fill' ? usual.toFill : usual.toDump
  const stage = stageUpTo[place][mark]
  return stage ? usual[stage] : 0
}
