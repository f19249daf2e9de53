import type { Issue } from '../issue'
import type { Bundle, Change, Fact, Inject } from '../plan'
import { advance, begin, carry, compileShuttle, fork, loseWater, lowerSource, startRecord, type Scenario, type ShuttleRecord, type SimState } from '../shuttle'
import { setOffAgain, turnRound } from './turn-round'
import { changedWorld, isWorld, worldOf, type World } from './world'

/** A run between two facts: its state at the beginning, from which any moment is reached again. */
export type Stretch = { readonly world: World; readonly scenario: Scenario; readonly start: SimState; readonly from_s: number }

/**
 * An exercise at a moment of its clock. Never changed in place: a branch is another session that shares what came before.
 */
export type Session = {
  readonly clock_s: number
  /** In the order in which they came about. */
  readonly facts: readonly Fact[]
  /** Injects that have yet to come, in the order of the exercise. */
  readonly armed: readonly Inject[]
  /** Closed stretches, each with what was recorded in it. */
  readonly past: readonly { readonly stretch: Stretch; readonly record: ShuttleRecord }[]
  readonly now: Stretch
}

/** The exercise at dispatch, or the issues for which its plan cannot be played. */
export function startSession(bundle: Bundle, injects: readonly Inject[] = []): Session | Issue[] {
  const world = worldOf(bundle)
  if (!isWorld(world)) return world
  const scenario = compileShuttle(world.spec)
  return { clock_s: 0, facts: [], armed: injects, past: [], now: { world, scenario, start: begin(scenario), from_s: 0 } }
}

/** Whether a session came of it, rather than the issues why not. */
export const isSession = (made: Session | Issue[]): made is Session => !Array.isArray(made)

/** The state at the session's clock; a copy, for reading. */
export function stateAt({ now, clock_s }: Session): SimState {
  const state = fork(now.start)
  advance(now.scenario, state, clock_s)
  return state
}

/** What was recorded of a stretch up to a moment. */
export function recordOf({ scenario, start }: Stretch, to_s: number): ShuttleRecord {
  const state = fork(start)
  const recorder = startRecord(scenario, state)
  advance(scenario, state, to_s, recorder.onEvent)
  return recorder.read()
}

/** What an inject is once it has come. */
export const factOf = (inject: Inject, at_s: number, by = ''): Fact => ({ id: `${inject.id}@${at_s}`, at_s, cause: 'inject', by, injectId: inject.id, change: inject.change })

/**
 * A fact takes effect at the session's clock: the run so far stays as it was, and goes on under what is so now.
 *
 * @returns the session from here, or the issues for which the change cannot be
 * @throws RangeError if the fact is of another moment
 */
export function takeEffect(session: Session, fact: Fact): Session | Issue[] {
  if (fact.at_s !== session.clock_s) throw new RangeError(`at_s is ${fact.at_s}, must be the clock, ${session.clock_s}`)
  const { now, clock_s } = session
  const world = changedWorld(now.world, fact.change, clock_s)
  if (!isWorld(world)) return world
  const scenario = world === now.world ? now.scenario : compileShuttle(world.spec)
  const state = stateAt(session)
  const start = carry(now.scenario, state, scenario)
  happenAt(scenario, start, fact.change)
  if (fact.change.kind === 'roadClosed') turnRound(now.world, { scenario: now.scenario, state }, scenario, start, { id: fact.change.roadId, point: fact.change.point })
  if (scenario !== now.scenario) setOffAgain(scenario, start)
  return {
    ...session,
    facts: [...session.facts, fact],
    armed: session.armed.filter(({ id }) => id !== fact.injectId),
    past: [...session.past, { stretch: now, record: recordOf(now, clock_s) }],
    now: { world, scenario, start, from_s: clock_s },
  }
}

/** What happens to the water itself. */
function happenAt(scenario: Scenario, state: SimState, change: Change): void {
  if (change.kind === 'tankTips') loseWater(scenario, state, scenario.spec.dumps.findIndex(({ id }) => id === change.dumpSiteId), change.lostShare)
  if (change.kind === 'sourceLow') lowerSource(scenario, state, scenario.spec.fills.findIndex(({ id }) => id === change.fillSiteId), change.leftShare)
}

/**
 * Facts take effect one after the other, each at its moment. Those that can no longer be, because another one is left out, are passed over.
 *
 * @param begun the exercise before them
 * @param facts in the order in which they came about
 */
export function foldFacts(begun: Session | Issue[], facts: readonly Fact[]): Session | Issue[] {
  let session = begun
  for (const fact of facts) {
    if (!isSession(session)) return session
    const made = takeEffect({ ...session, clock_s: fact.at_s }, fact)
    if (isSession(made)) session = made
  }
  return session
}

/**
 * The exercise again from dispatch, given only what came about: the same, to the bit, as one that was played.
 *
 * @param facts in the order in which they came about
 */
export function replay(bundle: Bundle, facts: readonly Fact[], until_s: number): Session | Issue[] {
  const session = foldFacts(startSession(bundle), facts)
  return isSession(session) ? { ...session, clock_s: until_s } : session
}
