import type { Issue } from '../issue'
import type { Bundle } from '../plan'
import { compilePlan, type CompiledPlan } from '../supply'
import type { Candidate, Effort } from './candidate'
import { workOf_s } from './effort'
import { figuresOf, type Figures } from './figures'
import { planWith } from './plan-with'
import { lacksWays, type ResolveWays } from './ways-with-closure'

/** What the plan gives as it is: what every change is compared with. */
export type Baseline = { readonly bundle: Bundle; readonly compiled: CompiledPlan; readonly figures: Figures }

/** A change simulated. Gains are against the plan as it is, and may be negative. */
export type Trial = {
  readonly candidate: Candidate
  readonly before: Figures
  readonly after: Figures
  readonly gain_gpm: number
  readonly effort: Effort
  /** People times time, in person-seconds. */
  readonly work_s: number
  /** The needed flow, if there is one, is met with this change alone. */
  readonly meetsNeed: boolean
  /** What the changed plan gives to look at that the plan as it is does not; ids are those of the changed plan. */
  readonly newIssues: readonly Issue[]
}

/** Why a change was not simulated to an answer. */
export type NoTrial = { readonly candidate: Candidate; readonly because: 'refused' | 'blocked' | 'roads-unknown'; readonly issues: readonly Issue[] }

export const isTrial = (outcome: Trial | NoTrial): outcome is Trial => 'after' in outcome

/** The plan as it is, with its ways found; undefined when something blocks its answer. */
export function baselineOf(given: Bundle, resolve: ResolveWays): Baseline | undefined {
  const bundle = resolve(given)
  const compiled = compilePlan(bundle)
  const figures = figuresOf(compiled)
  return figures && { bundle, compiled, figures }
}

/** Plans with a change, for as long as the plan as it is and the change are held: a trial itself is posted and stays small. */
const kept = new WeakMap<Baseline, WeakMap<Candidate, CompiledPlan>>()

/**
 * Applies a change to a copy of the plan and works it out as far as numbers, by the same road as the plan itself; once for each plan
 * and change.
 *
 * @param resolve that of the baseline
 */
export function changedPlan(base: Baseline, candidate: Candidate, resolve: ResolveWays): CompiledPlan | NoTrial {
  const known = kept.get(base) ?? new WeakMap<Candidate, CompiledPlan>()
  kept.set(base, known)
  const made = known.get(candidate)
  if (made) return made
  const changed = planWith(base.bundle.plan, candidate.edits)
  if ('code' in changed) return { candidate, because: 'refused', issues: [changed] }
  const bundle = resolve({ ...base.bundle, plan: changed.plan })
  // A straight line beside routed ways would make any new place look near.
  if (lacksWays(bundle)) return { candidate, because: 'roads-unknown', issues: [] }
  const compiled = compilePlan(bundle)
  known.set(candidate, compiled)
  return compiled
}

/** What the plan gives with a change. */
export function tryCandidate(base: Baseline, candidate: Candidate, resolve: ResolveWays): Trial | NoTrial {
  const compiled = changedPlan(base, candidate, resolve)
  if ('because' in compiled) return compiled
  const after = figuresOf(compiled)
  if (!after) return { candidate, because: 'blocked', issues: compiled.issues.filter(({ severity }) => severity === 'block') }
  const effort = effortOfTrial(candidate, compiled)
  const needed_gpm = compiled.demand.needed_gpm
  return {
    candidate, before: base.figures, after, effort,
    gain_gpm: after.flow_gpm - base.figures.flow_gpm,
    work_s: workOf_s(effort),
    meetsNeed: needed_gpm !== undefined && after.flow_gpm >= needed_gpm,
    newIssues: newIssuesOf(base.compiled.issues, compiled.issues, candidate),
  }
}

/** What there is to say of whom: an issue of a road is of the road, whoever drives it, all others of the items they name. */
const issueKey = ({ code, subjectIds, values }: Issue): string => (isOfRoad(code) ? `${code} ${values['name'] ?? ''}` : `${code} ${subjectIds.join(' ')}`)

const isOfRoad = (code: string): boolean => code.startsWith('route-')

/**
 * Warnings of a changed plan that the plan as it is does not give: of a road it already drives, only whom they newly concern.
 * A fill site that is moved keeps its id, and what is said of it is said of another place.
 */
function newIssuesOf(before: readonly Issue[], after: readonly Issue[], { kind, subjectIds: [, movedId] }: Candidate): Issue[] {
  const known = new Map<string, Set<string>>()
  for (const one of before) {
    const key = issueKey(one)
    known.set(key, new Set([...(known.get(key) ?? []), ...one.subjectIds]))
  }
  return after.filter(({ severity }) => severity === 'warn').flatMap((one): Issue[] => {
    const of = known.get(issueKey(one))
    if (!of || (kind === 'otherDraftSite' && movedId !== undefined && one.subjectIds.includes(movedId))) return [one]
    const newIds = isOfRoad(one.code) ? one.subjectIds.filter((id) => !of.has(id)) : []
    return newIds.length > 0 ? [{ ...one, subjectIds: newIds }] : []
  })
}

/** The stated effort, with the drive of what comes: from dispatch until it is in its place and ready. */
export function effortOfTrial({ effort, comes }: Candidate, { tenders, fills, dumps }: CompiledPlan): Effort {
  if (!comes) return effort
  const tender = tenders.find((one) => one.tender.id === comes.apparatusId)
  if (tender) return { ...effort, time_s: effort.time_s + (tender.spec.arrive_s ?? 0) }
  const ready_s = fills.find(({ site }) => site.id === comes.toId)?.ready_s ?? dumps.find(({ site }) => site.id === comes.toId)?.spec.pumpReady_s
  return { ...effort, time_s: Math.max(effort.time_s, ready_s ?? 0) }
}
