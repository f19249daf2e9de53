import { SECONDS_PER_MINUTE } from '../units'
import { FIRE, PHASE, phaseNames, settle, type PhaseName } from '../shuttle'
import { isNever } from './closures'
import { comingFrom, type Along } from './coming-from'
import { draftOf, type DraftView } from './draft-view'
import { stateAt, type Session } from './session'
import { readFlows, type SessionFlows } from './session-record'
import { findTrip } from './turn-round'

export type TankView = {
  readonly dumpSiteId: string
  /** In all its tanks, those in front too. */
  readonly level_gal: number
  readonly capacity_gal: number
  /** From tenders and lays; out to the fire ground and through leaks. */
  readonly in_gpm: number
  readonly out_gpm: number
  /** Until it is empty at what goes in and out now; absent while it holds or rises. */
  readonly lasts_s?: number
  /** Absent where nothing is asked of the site. */
  readonly draft?: DraftView
  readonly waitingCount: number
}

export type TenderView = Along & {
  readonly id: string
  readonly phase: PhaseName
  /** Site it is at or drives to. */
  readonly siteId: string
  readonly load_gal: number
  /** Site it set off from; absent where it does not drive, or comes from its station. */
  readonly fromId?: string
  /** Has no way to where it is to go: it stands where it set off, or does not come. */
  readonly isHeldUp?: boolean
  /** Until this phase ends as things are; absent where that hangs on others. */
  readonly left_s?: number
}

/** `source_gal`: left in a source that can run out. `running_gpm`: what flows past in one that holds nothing, a river; it has no other figure. */
export type FillView = { readonly fillSiteId: string; readonly draw_gpm: number; readonly source_gal?: number; readonly running_gpm?: number; readonly waitingCount: number }

/** An exercise at its clock, as somebody who could see all of it would see it. */
export type ExerciseView = {
  readonly flow_gpm: number
  readonly asked_gpm: number
  readonly engine_gal: number
  /** All supply has been ready: from then on the run leaves what is in the first engine's tank alone. */
  readonly isEngineHeld: boolean
  readonly tanks: readonly TankView[]
  readonly fills: readonly FillView[]
  readonly tenders: readonly TenderView[]
}

const drives = new Set<number>([PHASE.coming, PHASE.drivesToFill, PHASE.drivesToDump])

/**
 * A session at its clock, read off its state; the session stays as it is.
 *
 * @param flows what was recorded up to then, where it has been read already
 */
export function viewOf(session: Session, flows?: Pick<SessionFlows, 'log'>): ExerciseView {
  const { scenario } = session.now
  const { spec } = scenario
  const state = stateAt(session)
  settle(scenario, state)
  const now_s = session.clock_s
  const sites = [...spec.dumps, ...spec.fills].map(({ id }) => id)
  return {
    flow_gpm: state.fire[FIRE.flow_gpm]!,
    asked_gpm: scenario.demand.flow_gpm[state.stage[0]!]!,
    engine_gal: state.fire[FIRE.engine_gal]!,
    isEngineHeld: state.fire[FIRE.allReady_s]! <= now_s,
    tanks: spec.dumps.map(({ id, capacity_gal, front }, d) => {
      const level_gal = state.level_gal[d]! + state.front_gal[d]!
      const in_gpm = state.in_gpm[d]!
      const out_gpm = state.out_gpm[d]! + state.leak_gpm[d]!
      const draft = draftOf(session.clock_s, scenario, state, d, () => (flows ?? readFlows(session)).log)
      return {
        dumpSiteId: id, level_gal, in_gpm, out_gpm, capacity_gal: capacity_gal + (front?.capacity_gal ?? 0),
        ...(out_gpm > in_gpm && { lasts_s: (level_gal / (out_gpm - in_gpm)) * SECONDS_PER_MINUTE }),
        ...(draft && { draft }), waitingCount: state.waiting[d]!,
      }
    }),
    fills: spec.fills.map(({ id, usable_gal, inflow_gpm = 0 }, f) => ({
      fillSiteId: id, draw_gpm: state.draw_gpm[f]!, waitingCount: state.waiting[spec.dumps.length + f]!,
      ...(usable_gal === 0 && inflow_gpm > 0 ? { running_gpm: inflow_gpm } : usable_gal !== undefined && { source_gal: state.source_gal[f]! }),
    })),
    tenders: spec.tenders.map(({ id }, i) => {
      const ends_s = state.next_s[i]!
      const since_s = state.phaseSince_s[i]!
      const phase = state.phase[i]!
      const isDriving = drives.has(phase) && phase !== PHASE.coming
      return {
        id, phase: phaseNames[phase]!, siteId: sites[state.place[i]!] ?? '', load_gal: state.load_gal[i]!,
        ...(phase === PHASE.coming && !isNever(ends_s) && comingFrom(session, id, ends_s)),
        ...(isDriving && { fromId: originOf(session, state, i) }),
        ...(drives.has(phase) && isNever(ends_s) && { isHeldUp: true }),
        ...(isDriving && ends_s > since_s && ends_s < Infinity && { alongShare: Math.min(1, Math.max(0, (now_s - since_s) / (ends_s - since_s))) }),
        ...(!isNever(ends_s) && ends_s >= now_s && { left_s: ends_s - now_s }),
      }
    }),
  }
}

const originOf = ({ now }: Session, state: ReturnType<typeof stateAt>, i: number): string => findTrip(now.scenario, state, i)?.fromId ?? ''

/** The next moment after the clock at which something happens, for stepping from event to event; undefined when nothing will. */
export function nextEventAt(session: Session): number | undefined {
  const state = stateAt(session)
  const due = [...state.next_s].filter((time_s) => time_s > session.clock_s && !isNever(time_s))
  return due.length > 0 ? Math.min(...due) : undefined
}
