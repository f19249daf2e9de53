import { middleOf } from '../middle-of'
import type { SiteEvent } from '../plan'
import type { ExpectedTrip, LogWorld } from './log-world'

/**
 * How far two devices' clocks are apart, found from events that both saw or that a tender ties together.
 *
 * The same as two-way time transfer: a tender that leaves A at a and arrives at B at b gives b − a = T + θ, the one that
 * goes back gives b′ − a′ = −(T′) + θ, so half their sum is θ + (T − T′)/2 − half the planned difference. What the trips take
 * beyond the plan falls out as far as both directions take it alike.
 */
export type ClockOffset = {
  /** By how much B's clock is ahead of A's [s]. */
  offset_s: number
  /** The offset lies within this of the truth, nineteen times out of twenty, as far as trips differ as assumed [s]. */
  doubt_s: number
  basis: 'same-event' | 'both-ways' | 'one-way'
  /** Pairs of events that agree on it. */
  matchCount: number
  /** Other offsets that nearly as many pairs would agree on, such as a whole round more [s]. */
  rivals_s: number[]
}

type Direction = 'same' | 'there' | 'back'
type Candidate = { direction: Direction; offset_s: number; tolerance_s: number; travel_s: number; lopsided_s: number; a: string; b: string }

/** Two people who see one thing press within this of each other. Common practice, no source. */
const SAME_EVENT_S = 20
/** Pairs further apart than this are no pairs: a clock in another zone is, a clock of another day is told by its date. */
const MOST_S = 14 * 3600
/** As many pairs as the best, less this share, are a rival. */
const RIVAL_SHARE = 0.35
/** Offsets that are looked at beside the best. */
const MOST_PEAKS = 8
/**
 * A device's clock is mostly right, and tenders go round in much the same time, so a shift of a whole round fits nearly as
 * well: an offset no larger than this is taken where it has this share of the best one's pairs. Common practice, no source.
 */
const MOSTLY_RIGHT_S = 600
const AS_GOOD_SHARE = 0.8

/**
 * @param eventsA of one device, that count
 * @param eventsB of another
 * @returns undefined where nothing ties them together
 */
export function findClockOffset(eventsA: readonly SiteEvent[], eventsB: readonly SiteEvent[], world: Pick<LogWorld, 'findTrip'>): ClockOffset | undefined {
  const candidates = candidatesOf(eventsA, eventsB, world)
  const peaks = peaksOf(candidates)
  const [best] = peaks
  if (!best) return undefined
  const taken = peaks.find(({ votes, offset_s }) => votes >= best.votes * AS_GOOD_SHARE && Math.abs(offset_s) <= MOSTLY_RIGHT_S) ?? best
  const matched = pairedOff(candidates, taken.offset_s)
  const rivals_s = peaks.filter(({ votes, offset_s }) => votes >= best.votes * (1 - RIVAL_SHARE) && offset_s !== taken.offset_s).map(({ offset_s }) => offset_s)
  return { ...offsetFrom(matched), matchCount: matched.length, rivals_s }
}

function candidatesOf(eventsA: readonly SiteEvent[], eventsB: readonly SiteEvent[], world: Pick<LogWorld, 'findTrip'>): Candidate[] {
  const found: Candidate[] = []
  const add = (direction: Direction, a: SiteEvent, b: SiteEvent, trip: ExpectedTrip) => {
    const seen_s = (b.at_ms - a.at_ms) / 1000
    const offset_s = direction === 'back' ? seen_s + trip.travel_s : seen_s - trip.travel_s
    if (Math.abs(offset_s) <= MOST_S) found.push({ direction, offset_s, tolerance_s: trip.doubt_s, travel_s: trip.travel_s, lopsided_s: trip.lopsided_s, a: a.id, b: b.id })
  }
  for (const a of eventsA) {
    if (a.apparatusId === undefined) continue
    for (const b of eventsB) {
      if (b.apparatusId !== a.apparatusId) continue
      const isHere = a.post.siteId === b.post.siteId && a.post.kind === b.post.kind
      if (isHere) {
        if (a.kind === b.kind) add('same', a, b, { travel_s: 0, doubt_s: SAME_EVENT_S, lopsided_s: 0 })
        continue
      }
      if (a.post.siteId === undefined || b.post.siteId === undefined) continue
      const there = a.kind === 'left' && b.kind === 'arrived' ? world.findTrip(a.apparatusId, a.post.siteId, b.post.siteId) : undefined
      const back = a.kind === 'arrived' && b.kind === 'left' ? world.findTrip(a.apparatusId, b.post.siteId, a.post.siteId) : undefined
      if (there) add('there', a, b, there)
      if (back) add('back', a, b, back)
    }
  }
  return found
}

/** Offsets on which candidates agree, each with how many, those that fit less well counting less: best first, of equals the smaller. */
function peaksOf(candidates: readonly Candidate[]): { offset_s: number; votes: number }[] {
  const sorted = candidates.toSorted((a, b) => a.offset_s - b.offset_s)
  const widest_s = Math.max(0, ...sorted.map(({ tolerance_s }) => tolerance_s))
  let from = 0
  const scored = sorted.map(({ offset_s }) => {
    while ((sorted[from]?.offset_s ?? Infinity) < offset_s - widest_s) from += 1
    let votes = 0
    for (let at = from; at < sorted.length; at++) {
      const one = sorted[at]
      if (!one || one.offset_s > offset_s + widest_s) break
      votes += Math.max(0, 1 - ((one.offset_s - offset_s) / one.tolerance_s) ** 2)
    }
    return { offset_s, votes }
  }).sort((a, b) => b.votes - a.votes || Math.abs(a.offset_s) - Math.abs(b.offset_s))
  const peaks: typeof scored = []
  for (const one of scored) {
    if (peaks.length === MOST_PEAKS) break
    if (peaks.every(({ offset_s }) => Math.abs(offset_s - one.offset_s) > 2 * widest_s)) peaks.push(one)
  }
  return peaks
}

/** The candidates that agree with an offset, each event in one of them alone, the nearest first. */
function pairedOff(candidates: readonly Candidate[], about_s: number): Candidate[] {
  const used = new Set<string>()
  const off = ({ offset_s }: Candidate) => Math.abs(offset_s - about_s)
  return candidates.filter((one) => off(one) <= one.tolerance_s).toSorted((a, b) => off(a) - off(b)).filter(({ direction, a, b }) => {
    const names = [`${direction} ${a}`, `${direction} ${b}`]
    if (names.some((name) => used.has(name))) return false
    for (const name of names) used.add(name)
    return true
  })
}

function offsetFrom(matched: readonly Candidate[]): Pick<ClockOffset, 'offset_s' | 'doubt_s' | 'basis'> {
  const of = (direction: Direction) => summary(matched.filter((one) => one.direction === direction))
  const [same, there, back] = [of('same'), of('there'), of('back')]
  const lopsided_s = Math.max(there?.lopsided_s ?? 0, back?.lopsided_s ?? 0)
  if (same) return { offset_s: same.middle_s, doubt_s: Math.max(2, Math.hypot(same.error_s, SAME_EVENT_S / 4)), basis: 'same-event' }
  if (there && back)
    return { offset_s: (there.middle_s + back.middle_s) / 2, doubt_s: Math.hypot(there.error_s, back.error_s) / 2 + lopsided_s / 2, basis: 'both-ways' }
  const one = there ?? back
  return { offset_s: one?.middle_s ?? 0, doubt_s: Math.hypot(one?.error_s ?? 0, one?.tolerance_s ?? 0), basis: 'one-way' }
}

/** Median, and twice its standard error from the spread of the middle half, for these few. */
function summary(pairs: readonly Candidate[]): { middle_s: number; error_s: number; lopsided_s: number; tolerance_s: number } | undefined {
  if (pairs.length === 0) return undefined
  const offsets = pairs.map(({ offset_s }) => offset_s)
  const tolerance_s = middleOf(pairs.map((one) => one.tolerance_s))
  const middle_s = middleOf(offsets)
  // A single pair says nothing of its own spread: what a trip is allowed stands in for it.
  const off_s = offsets.length < 3 ? tolerance_s / 2 : 1.4826 * middleOf(offsets.map((offset_s) => Math.abs(offset_s - middle_s)))
  return { middle_s, error_s: (2 * 1.2533 * off_s) / Math.sqrt(offsets.length), lopsided_s: Math.max(...pairs.map((one) => one.lopsided_s)), tolerance_s }
}
