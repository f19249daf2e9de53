'use client'

import { useCallback, useEffect, useMemo, useRef } from 'react'
import { namesOf, type Change, type EditBody, type Exercise, type Inject } from '@/lib/plan'
import { factOf, follower, isSession, playSession, takeEffect, type Session } from '@/lib/exercise'
import { FIRE_GROUND } from '@/lib/supply'
import { getClient, useDocument, type DocumentView } from '../_client'
import { stationNow } from '../_live/station-time'
import { useLiveDocument, type LiveDocument } from '../_live/use-live-document'
import { say, sayIssue, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { clockAt, setClock } from './exercise-clock'
import { useRunningClock } from './use-running-clock'

export type ExerciseDesk = {
  /** Whether the station is heard, and which seats are taken by devices now. */
  live: LiveDocument
  status: DocumentView['status']
  exercise: Exercise | undefined
  /** The run at the clock; undefined where the plan cannot be played. */
  session: Session | undefined
  clock_s: number
  isEnded: boolean
  names: NameOf
  run(isRunning: boolean, speedFactor?: number): void
  jump(to_s: number): void
  end(): void
  /** A decision takes effect at the clock. @returns whether it could */
  decide(change: Change, by: string): boolean
  bring(inject: Inject): void
  edit(body: EditBody | readonly EditBody[], label: string, isOfTime?: boolean): void
}

/**
 * An exercise with its run.
 *
 * @param leads true on the one screen that lets injects come: what comes is written down there, and read by all others
 */
export function useExercise(exerciseId: string, leads: boolean): ExerciseDesk {
  const { doc: exercise, status, conflicts } = useDocument<Exercise>(exerciseId)
  const live = useLiveDocument(exerciseId)
  const toast = useToast()
  const [system] = useUnitSystem()
  const isEnded = exercise?.endedAt_s !== undefined
  const running_s = useRunningClock(exercise?.clock)
  const clock_s = exercise?.endedAt_s ?? running_s

  const { bundle, facts, injects } = exercise ?? {}
  const follow = useMemo(() => bundle && follower(bundle), [bundle])
  const run = useMemo(() => {
    if (!follow || !facts) return undefined
    const followed = follow(facts)
    // At the last fact, even where that one could not take effect.
    return isSession(followed.session) ? { ...followed.session, clock_s: followed.facts.at(-1)?.at_s ?? 0 } : undefined
  }, [follow, facts])
  const armed = useMemo(() => (injects && facts ? armedOf({ injects, facts }) : []), [injects, facts])
  const base = useMemo(() => run && { ...run, armed }, [run, armed])
  // What was brought in by a decision has its name in the plan as it was then.
  const itemNames = useMemo(() => {
    if (!bundle || !injects) return new Map<string, string>()
    const bundles = base ? [...base.past.map(({ stretch }) => stretch), base.now].map(({ world }) => world.bundle) : []
    const roads = injects.flatMap(({ title, change }): [string, string][] => (change.kind === 'roadClosed' ? [[change.roadId, change.name ?? title]] : []))
    return new Map([...roads, ...[...new Set([bundle, ...bundles])].flatMap((one) => [...namesOf(one)])])
  }, [bundle, injects, base])
  const names: NameOf = useCallback((id) => itemNames.get(id) ?? (id === FIRE_GROUND ? say('plan.fire-ground') : undefined), [itemNames])
  const session = useMemo(() => base && { ...base, clock_s: Math.max(base.clock_s, clock_s) }, [base, clock_s])

  const edit = useCallback((body: EditBody | readonly EditBody[], label: string, isOfTime = false) => {
    const refused = getClient().edit(exerciseId, body, { label, isOfTime })
    if (refused) toast({ text: sayIssue(refused, names, system), look: 'danger' })
  }, [exerciseId, names, system, toast])

  // Two screens have set the clock at once: the one that came first stands, and nobody is asked.
  useEffect(() => {
    for (const { id, values } of conflicts) {
      if (values.every(({ path }) => path === 'clock')) getClient().resolve(exerciseId, id, 'theirs', { label: say('exercise.clock') })
    }
  }, [conflicts, exerciseId])

  const noted = useRef(new Set<string>())
  useEffect(() => {
    if (!leads || isEnded || !base || !exercise?.clock || clock_s <= base.clock_s) return
    const edits: EditBody[] = []
    const before = new Set(base.facts.map(({ id }) => id))
    const after = playSession(base, clock_s, ({ inject, refused }) => {
      if (!refused || noted.current.has(inject.id)) return
      noted.current.add(inject.id)
      toast({ text: say('exercise.inject.refused', { title: inject.title, reason: refused.map((one) => sayIssue(one, names, system)).join(' ') }), look: 'danger' })
      edits.push({ kind: 'setFields', collection: 'injects', id: inject.id, set: { trigger: { kind: 'hand' } } })
    })
    for (const fact of after.facts) if (!before.has(fact.id)) edits.push({ kind: 'addItem', collection: 'facts', item: fact })
    if (edits.length > 0) edit(edits, say('exercise.inject.came'), true)
  }, [leads, isEnded, base, exercise, clock_s, edit, names, system, toast])

  const setTo = useCallback((at_s: number, isRunning: boolean, speedFactor: number) => {
    edit({ kind: 'setFields', set: { clock: setClock(at_s, isRunning, speedFactor, stationNow()) } }, say('exercise.clock'), true)
  }, [edit])
  const clock = exercise?.clock
  const now_s = useCallback(() => Math.max(base?.clock_s ?? 0, clockAt(clock, stationNow())), [base, clock])

  const take = useCallback((change: Change, by: string, inject?: Inject): boolean => {
    if (!base) return false
    const at_s = now_s()
    const fact = inject ? factOf(inject, at_s, by) : { id: getClient().newId(), at_s, cause: 'decision' as const, by, change }
    const made = takeEffect({ ...base, clock_s: at_s }, fact)
    if (!isSession(made)) {
      toast({ text: made.map((one) => sayIssue(one, withNew(names, change), system)).join(' '), look: 'danger' })
      return false
    }
    edit({ kind: 'addItem', collection: 'facts', item: fact }, say(inject ? 'exercise.inject.came' : 'exercise.decision'))
    return true
  }, [base, now_s, edit, names, system, toast])

  return {
    live, status, exercise, session, clock_s: session?.clock_s ?? clock_s, isEnded, names, edit,
    run: (isRunning, speedFactor = clock?.speedFactor ?? 1) => { setTo(now_s(), isRunning, speedFactor) },
    jump: (to_s) => { setTo(to_s, false, clock?.speedFactor ?? 1) },
    end: () => { edit({ kind: 'setFields', set: { endedAt_s: now_s() } }, say('exercise.end')) },
    decide: (change, by) => take(change, by),
    bring: (inject) => { take(inject.change, '', inject) },
  }
}

/** Injects that have not come: no fact is theirs. */
const armedOf = ({ injects, facts }: Pick<Exercise, 'injects' | 'facts'>): Inject[] => injects.filter(({ id }) => !facts.some(({ injectId }) => injectId === id))

/** Names with those of what a change would bring in: it is in no document yet. */
function withNew(names: NameOf, change: Change): NameOf {
  const added = change.kind === 'plan' ? change.edits.flatMap(({ body }) => (body.kind === 'addItem' ? [body.item as { id: string; name?: string; tenderId?: string }] : [])) : []
  return (id) => {
    const item = added.find((one) => one.id === id)
    return item?.name ?? names(item?.tenderId ?? id)
  }
}
