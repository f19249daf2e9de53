import { candidatesOf, type Candidate, type Progress, type ResolveWays } from '../advise'
import type { Bundle, Change, EditBody, Fact } from '../plan'
import { sitesOfTask } from '../supply'
import { changeOfEdits, editsOf } from './candidate-change'
import { isSession, replay, takeEffect, type Session } from './session'
import { readFlows } from './session-record'
import { shortfallOf } from './shortfall'

/** What the fire ground missed from the moment an inject came. */
export type Outcome = {
  readonly short_s: number
  readonly missing_gal: number
  /** From the inject to the moment from which the flow asked for was there to the end; 0 where it never fell behind, absent where it never came back. */
  readonly recovered_s?: number
}

/** Something that could have been decided. */
export type Option =
  | { readonly kind: 'advice'; readonly candidate: Candidate }
  /** Tenders of one fill or dump site sent to another. */
  | { readonly kind: 'send'; readonly tenderIds: readonly string[]; readonly toId: string }

/** What was decided on one inject, beside what could have been. */
export type InjectAnswer = {
  readonly factId: string
  /** Decisions taken from then until the next inject: what answered it. */
  readonly decisionIds: readonly string[]
  readonly decided: Outcome
  /** The same with those decisions left out. */
  readonly nothing: Outcome
  /** The best three that were found, best first; only what is better than deciding nothing. */
  readonly best: readonly { readonly option: Option; readonly outcome: Outcome }[]
  readonly triedCount: number
}

/** So much less is missing that it is worth saying. */
const LEAST_GAL = 25
const SHOWN = 3

/**
 * For each inject of an exercise the best that could have been decided at once: every single change that the advice engine has for the
 * plan as it stood then, and tenders sent to other sites, each played on to the end in place of what was decided.
 *
 * What was decided on other injects stays, and so do all injects, so that the runs differ in this one answer alone. A change that
 * needs nobody to come is in place after the time that the advice takes for it; what has to come is sent at once. Pairs of changes are
 * not tried, nor repairs: how long a repair takes is not known to a plan.
 *
 * @param facts   in order; the exercise must be playable with them
 * @param to_s    end of the exercise
 * @param resolve finds the ways of changed plans
 * @throws RangeError if the plan cannot be played
 */
export function* bestAnswers(bundle: Bundle, facts: readonly Fact[], to_s: number, resolve: ResolveWays): Generator<Progress, InjectAnswer[]> {
  const injects = facts.filter(({ cause, change }) => cause === 'inject' && !isRelief(change))
  const answers: InjectAnswer[] = []
  for (const [k, inject] of injects.entries()) {
    const next = injects.find(({ at_s }) => at_s > inject.at_s)
    // Injects of one moment are answered together.
    const before = facts.filter((one) => one.at_s < inject.at_s || (one.cause === 'inject' && one.at_s === inject.at_s) || facts.indexOf(one) < facts.indexOf(inject))
    const decisions = facts.filter((one) => !before.includes(one) && one.cause === 'decision' && (next === undefined || facts.indexOf(one) < facts.indexOf(next)))
    const later = facts.filter((one) => !before.includes(one) && !decisions.includes(one))
    const there = replay(bundle, before, inject.at_s)
    if (!isSession(there)) throw new RangeError(`bundle is blocked (${there.map(({ code }) => code).join(', ')}), must be playable`)
    const outcome = (given: readonly Fact[]) => outcomeFrom(there, inject.at_s, [...later, ...given], to_s)
    const found: { option: Option; outcome: Outcome }[] = []
    let triedCount = 0
    const options = optionsOf(there, resolve)
    for (const [i, { option, edits, wait_s }] of options.entries()) {
      const change = changeOfEdits(there.now.world.bundle, edits, there.now.world.conditions, resolve)
      const tried = change && outcome([factOf(change, inject.at_s + wait_s)])
      if (tried) {
        triedCount += 1
        found.push({ option, outcome: tried })
      }
      yield { doneShare: (k + (i + 1) / (options.length + 1)) / injects.length }
    }
    const nothing = outcomeFrom(there, inject.at_s, later, to_s)!
    const best = found.sort((a, b) => compare(a.outcome, b.outcome)).filter((one) => nothing.missing_gal - one.outcome.missing_gal >= LEAST_GAL)
    answers.push({
      factId: inject.id, decisionIds: decisions.map(({ id }) => id), nothing, triedCount,
      decided: outcomeFrom(there, inject.at_s, [...decisions, ...later], to_s)!,
      best: best.filter((one, i) => best.findIndex((other) => groupOf(other.option) === groupOf(one.option)) === i).slice(0, SHOWN),
    })
  }
  return answers
}

/** What makes something well again, such as a prime drill that was played for it: no trouble, whoever brought it. */
export const isRelief = (change: Change): boolean =>
  ((change.kind === 'fillRate' || change.kind === 'layRate') && change.rateShare === 1) || (change.kind === 'tankLeak' && change.leak_gpm === 0) || change.kind === 'roadOpened'

const factOf = (change: Change, at_s: number): Fact => ({ id: 'option', at_s, cause: 'decision', by: '', change })

const compare = (a: Outcome, b: Outcome): number => a.missing_gal - b.missing_gal || a.short_s - b.short_s

const groupOf = (option: Option): string => (option.kind === 'advice' ? option.candidate.group : `send ${option.toId}`)

/** The run goes on from a moment with some facts; undefined where the one that is tried cannot be. */
function outcomeFrom(there: Session, from_s: number, facts: readonly Fact[], to_s: number): Outcome | undefined {
  let session = there
  for (const fact of facts.toSorted((a, b) => a.at_s - b.at_s)) {
    if (fact.at_s > to_s) break
    const made = takeEffect({ ...session, clock_s: fact.at_s }, fact)
    if (isSession(made)) session = made
    else if (fact.id === 'option') return undefined
  }
  const end = { ...session, clock_s: to_s }
  const { asked, flow } = readFlows(end)
  const counted_s = Math.max(from_s, Math.min(to_s, end.now.scenario.demand.countFrom_s))
  const { short_s, missing_gal, lastTo_s } = shortfallOf(asked, flow, counted_s, to_s)
  const recovered_s = short_s === 0 ? 0 : lastTo_s === undefined ? undefined : lastTo_s - from_s
  return { short_s, missing_gal, ...(recovered_s !== undefined && { recovered_s }) }
}

type Planned = { readonly option: Option; readonly edits: readonly EditBody[]; readonly wait_s: number }

function optionsOf({ now: { world } }: Session, resolve: ResolveWays): Planned[] {
  const advised = candidatesOf(world.bundle, resolve).map((candidate): Planned => ({
    option: { kind: 'advice', candidate }, edits: editsOf(world.bundle, candidate, 'now'), wait_s: candidate.comes ? 0 : candidate.effort.time_s,
  }))
  return [...advised, ...sendings(world.bundle)]
}

/** From each site to each other of its kind: all its tenders, or every second of them. */
function sendings(bundle: Bundle): Planned[] {
  const { plan } = bundle
  return ([['fillSiteId', plan.fillSites], ['dumpSiteId', plan.dumpSites]] as const).flatMap(([field, sites]) =>
    sites.flatMap((from) => sites.filter(({ id }) => id !== from.id).flatMap((to): Planned[] => {
      const all = plan.tenders.filter((task) => sitesOfTask(bundle, task)[field] === from.id)
      const halves = all.length > 1 ? [all, all.filter((_, i) => i % 2 === 0)] : [all]
      return halves.filter((tasks) => tasks.length > 0).map((tasks) => ({
        option: { kind: 'send', tenderIds: tasks.map(({ tenderId }) => tenderId as string), toId: to.id }, wait_s: 0,
        edits: tasks.map(({ id }) => ({ kind: 'setFields', collection: 'tenders', id, set: { [field]: to.id } })),
      }))
    })))
}
