import type { ReviewTender } from '@/lib/review/loads'
import type { TenderEvent } from '@/lib/review/marks'
import type { ShuttleSpec } from '@/lib/shuttle'
import { stepThrough, type SeenMark, type StepAnswer } from './one-second-model'

/*
 * Logs as people would keep them of a run of the one-second model: every phone has its own clock, taps come a little
 * early or late, some never come, some come twice, and some in the wrong order.
 */

export type Mess = {
  jitter_s: number // taps lie so far to either side
  dropShare: number
  doubleShare: number
  swapShare: number // neighbours of one stay tapped in the wrong order
  clock_s: number // clocks of the two posts lie so far to either side
}

export const plain: Mess = { jitter_s: 0, dropShare: 0, doubleShare: 0, swapShare: 0, clock_s: 0 }
export const messy: Mess = { jitter_s: 8, dropShare: 0.12, doubleShare: 0.06, swapShare: 0.04, clock_s: 45 }

export type Kept = { answer: StepAnswer; events: Map<string, TenderEvent[]>; tenders: ReviewTender[]; end_s: number; broughtBy: (at_s: number) => number }

export function keepLog(spec: ShuttleSpec, mess: Mess, seed: number, flow?: number): Kept {
  let word = seed >>> 0
  const next = (): number => { word = (Math.imul(word, 1664525) + 1013904223) >>> 0; return word / 4294967296 }
  const marks: SeenMark[] = []
  const brought: number[] = [0]
  const answer = stepThrough(spec, { lastsAfterReady: 5400, ...(flow !== undefined && { flow }), onMark: (mark) => { marks.push(mark) }, onStep: (_, gal) => { brought.push(gal) } })
  const clock = { dump: 0, fill: (2 * next() - 1) * mess.clock_s }
  const events = new Map<string, TenderEvent[]>(spec.tenders.map(({ id }) => [id, []]))
  let count = 0
  const add = (mark: SeenMark, at: number): void => {
    const t = spec.tenders[mark.truck]!
    events.get(t.id)!.push({ id: `e${count++}`, at_s: Math.max(0, at), place: mark.place, mark: mark.mark, siteId: mark.place === 'dump' ? spec.dumps[t.dumpIndex]!.id : spec.fills[t.fillIndex]!.id })
  }
  marks.filter(({ at }) => at <= answer.end).forEach((mark, k) => {
    if (next() < mess.dropShare) return
    const other = marks[k + 1]
    const isSwapped = next() < mess.swapShare && other?.truck === mark.truck && other.place === mark.place
    const at = (isSwapped ? other.at + 2 : mark.at) + (2 * next() - 1) * mess.jitter_s + clock[mark.place]
    add(mark, at)
    if (next() < mess.doubleShare) add(mark, at + 1 + 20 * next())
  })
  const tenders = spec.tenders.map(({ id, usable_gal, spillShare = 0 }) => ({ id, usable_gal, keptShare: 1 - spillShare }))
  return { answer, events, tenders, end_s: answer.end, broughtBy: (at_s) => brought[Math.min(brought.length - 1, Math.max(0, Math.round(at_s)))]! }
}
