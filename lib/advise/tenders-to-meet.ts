import { findStation, findTender, type Bundle, type Tender, type TenderTask } from '../plan'
import { compilePlan, limitingLinkOf, type CompiledPlan, type Link } from '../supply'
import { figuresOf } from './figures'
import type { Progress } from './progress'
import { noticeable_gpm } from './rank'
import type { ResolveWays } from './ways-with-closure'

/** How many more tenders of one kind a flow would take, at the plan's own sites. */
export type TendersToMeet = {
  /** The tender of the plan that the others would be like. */
  readonly likeId: string
  readonly asked_gpm: number
  /** So many more meet it; null: none of the numbers tried does. */
  readonly count: number | null
  /** With them, or the most that any number tried gives. */
  readonly flow_gpm: number
  readonly triedCount: number
  /** What limits the flow with the most of them, where no number of tenders meets it; null: no part by itself. */
  readonly limit: Pick<Link, 'kind' | 'subjectId'> | null
}

const MOST_MORE = 20
/** So many more tenders in a row that together bring nothing to notice: the rest bring nothing either. */
const IDLE_IN_A_ROW = 3

/**
 * How many more tenders like the plan's own would meet a flow: one after the other is added and the plan worked out
 * anew, until it is met or the last three bring nothing.
 *
 * "Like the plan's own": the home tender of middle load among those that haul, so that neither the largest nor the
 * smallest of the district decides; where all are mutual aid, one of them.
 *
 * @param planned the plan as it is, where it is worked out already
 * @returns a generator whose result is undefined where no tender hauls or something blocks the plan
 */
export function* tendersToMeet(bundle: Bundle, asked_gpm: number, resolve: ResolveWays, planned: CompiledPlan = compilePlan(bundle)): Generator<Progress, TendersToMeet | undefined> {
  const like = findTypical(bundle)
  const first = like && figuresOf(planned)
  if (!like || !first) return undefined
  let best = { flow_gpm: first.flow_gpm, compiled: planned }
  const flows_gpm = [first.flow_gpm]
  for (let count = 1; count <= MOST_MORE; count++) {
    yield { doneShare: count / MOST_MORE }
    const compiled = compilePlan(resolve(withMore(bundle, like, count)))
    const flow_gpm = figuresOf(compiled)?.flow_gpm ?? 0
    if (flow_gpm >= asked_gpm) return { likeId: like.tender.id, asked_gpm, count, flow_gpm, triedCount: count, limit: null }
    if (flow_gpm > best.flow_gpm) best = { flow_gpm, compiled }
    flows_gpm.push(flow_gpm)
    const before_gpm = Math.max(...flows_gpm.slice(0, -IDLE_IN_A_ROW))
    if (count >= IDLE_IN_A_ROW && Math.max(...flows_gpm.slice(-IDLE_IN_A_ROW)) < before_gpm + noticeable_gpm(before_gpm)) break
  }
  return { likeId: like.tender.id, asked_gpm, count: null, flow_gpm: best.flow_gpm, triedCount: flows_gpm.length - 1, limit: limitOf(best.compiled, best.flow_gpm) }
}

type Like = { readonly tender: Tender; readonly task: TenderTask }

function findTypical(bundle: Bundle): Like | undefined {
  const all = bundle.plan.tenders.flatMap((task): Like[] => { const tender = findTender(bundle, task.tenderId); return tender?.tank_gal ? [{ tender, task }] : [] })
  const home = all.filter(({ tender: { mutualAid, stationId } }) => !(mutualAid ?? findStation(bundle, stationId)?.mutualAid ?? false))
  const from = (home.length > 0 ? home : all).sort((a, b) => (a.tender.tank_gal ?? 0) - (b.tender.tank_gal ?? 0))
  return from[Math.floor((from.length - 1) / 2)]
}

/** The plan with so many more of a tender, from its station to its sites, by its ways. */
function withMore({ district, plan, legs, ...rest }: Bundle, { tender, task }: Like, count: number): Bundle {
  const more = Array.from({ length: count }, (_, index) => `${tender.id}+${index + 1}`)
  return {
    ...rest, legs,
    district: { ...district, apparatus: [...district.apparatus, ...more.map((id) => ({ ...tender, id: id as Tender['id'] }))] },
    plan: {
      ...plan,
      tenders: [...plan.tenders, ...more.map((id) => ({ ...task, id: `${id}-task` as TenderTask['id'], tenderId: id as TenderTask['tenderId'] }))],
      legNotes: [...plan.legNotes, ...plan.legNotes.filter(({ apparatusId }) => apparatusId === tender.id).flatMap((note) => more.map((id) => ({ ...note, id: `${note.id}-${id}` as typeof note.id, apparatusId: id as Tender['id'] })))],
    },
  }
}

function limitOf(compiled: CompiledPlan, flow_gpm: number): TendersToMeet['limit'] {
  const link = limitingLinkOf(compiled, flow_gpm)
  return link && { kind: link.kind, subjectId: link.subjectId }
}
