import type { Inject, Trigger } from '../plan'
import type { ShuttleRecord } from '../shuttle'
import { recordOf, type Session } from './session'

type Due = { readonly inject: Inject; readonly at_s: number }

/**
 * The inject that comes first up to a moment, and when; of several at once the first in the exercise.
 *
 * Levels move in straight lines between the points of a record, so the moment at which one is passed is exact.
 */
export function firstTrigger(session: Session, until_s: number): Due | undefined {
  let record: ShuttleRecord | undefined
  const recorded = () => (record ??= recordOf(session.now, until_s))
  let first: Due | undefined
  for (const inject of session.armed) {
    const due_s = dueAt(session, inject.trigger, recorded)
    if (due_s === undefined) continue
    const at_s = Math.max(due_s, session.clock_s)
    if (at_s <= until_s && (!first || at_s < first.at_s)) first = { inject, at_s }
  }
  return first
}

function dueAt(session: Session, trigger: Trigger, recorded: () => ShuttleRecord): number | undefined {
  switch (trigger.kind) {
    case 'hand':
      return undefined
    case 'time':
      return trigger.at_s
    case 'after': {
      const happened_s = firstEvent(session, trigger.event, recorded)
      return happened_s === undefined ? undefined : happened_s + trigger.delay_s
    }
    case 'level':
      return belowAt(session, trigger, recorded())
  }
}

function firstEvent({ past }: Session, event: string, recorded: () => ShuttleRecord): number | undefined {
  for (const { record } of past) {
    const found = record.log.find(({ kind }) => kind === event)
    if (found) return found.time_s
  }
  return recorded().log.find(({ kind }) => kind === event)?.time_s
}

function belowAt(session: Session, { dumpSiteId, belowShare, from_s }: Extract<Trigger, { kind: 'level' }>, record: ShuttleRecord): number | undefined {
  const d = session.now.scenario.spec.dumps.findIndex(({ id }) => id === dumpSiteId)
  const dump = session.now.scenario.spec.dumps[d]
  if (!dump) return undefined
  const begin_s = Math.max(session.clock_s, from_s ?? record.run.dumps[d]?.supplyReady_s ?? Infinity)
  const limit_gal = dump.capacity_gal * belowShare
  const points = record.levels[d] ?? []
  for (const [k, point] of points.entries()) {
    const next = points[k + 1]
    if (next === undefined || next.time_s < begin_s) continue
    const along = (time_s: number) => point.level_gal + ((next.level_gal - point.level_gal) * (time_s - point.time_s)) / (next.time_s - point.time_s)
    const start_s = Math.max(begin_s, point.time_s)
    if (along(start_s) < limit_gal) return start_s
    if (next.level_gal < limit_gal) return start_s + ((along(start_s) - limit_gal) * (next.time_s - start_s)) / (along(start_s) - next.level_gal)
  }
  return undefined
}
