import type { Bundle, LegNote } from '../../plan'
import { defaults, FIRE_GROUND, lastingFlow_gpm, layFlow, seasonDrop, sourceOfLay, sourceWater, type SourceWater } from '../../supply'
import { FEET_PER_MILE, METRES_PER_FOOT } from '../../units'
import type { Progress } from '../progress'
import type { ResolveWays } from '../ways-with-closure'
import { supplyHose_ft, type Equipment } from './equipment'
import { tryPlan } from './trial'
import { dumpOf, fillAt, layAlong, planOf, type Candidate } from './variant'

export type CurvePoint = { readonly distance_mi: number; readonly relay_gpm: number; readonly shuttle_gpm: number }

/** Flow against distance for relay and shuttle from the same equipment. */
export type BreakEven = {
  readonly fromId: string
  readonly points: readonly CurvePoint[]
  /** Beyond it the shuttle brings more; absent where one brings more at every distance drawn. */
  readonly even?: { readonly distance_mi: number; readonly flow_gpm: number; readonly because: 'flow' | 'hose' }
}

const POINT_COUNT = 12
const FINER_COUNT = 12
/** Drawn to half as far again as the hose reaches, at least so far. [mi] */
const LEAST_FAR_MI = 1
const METRES_PER_DEGREE = 111_195

/**
 * Relay and shuttle at growing distances: all else as it is, the hose over level ground, the road as long as the hose's way.
 *
 *   relay(d): the largest flow of the pumpers and hose at hand over d, no more than the source gives for as long as supply must last, 0 beyond the hose
 *   shuttle(d): the flow sustained with legs of d by the handbook's T = 0.65 + (60 / mph) · d
 *
 * The crossing is halved down to a few feet.
 *
 * @returns a generator: its yields are progress, its result the curve; undefined without pumpers, tenders or a dump site
 */
export function* breakEven(given: Bundle, candidate: Candidate, equipment: Equipment, resolve: ResolveWays): Generator<Progress, BreakEven | undefined> {
  const own = given.plan.dumpSites[0]?.pumperId
  const free = equipment.pumpers.map(({ id }) => id as string).filter((id) => id !== own).slice(0, 5)
  const [first, second] = free
  const dump = dumpOf(given, given.plan.dumpSites[0] ? own : second)
  const tenderIds = equipment.tenders.map(({ id }) => id as string)
  const hose_ft = supplyHose_ft(equipment.hose)
  if (!first || !dump || tenderIds.length === 0 || hose_ft <= 0) return undefined
  const fill = fillAt(given, candidate, tenderIds.length, first)
  const source = sourceOfLay(given, candidate.fromId)
  const water = sourceWater(source, seasonDrop(source, given.plan.season))
  const relay = (distance_mi: number): number => relayAt(given, candidate, equipment, free, water, distance_mi)
  const shuttle = (distance_mi: number): number => {
    const note = (id: string, fromId: string, toId: string): LegNote => ({ id, fromId, toId, distance_mi })
    const plan = planOf(given.plan, { fill, dump, tenderIds })
    const legNotes = [...plan.legNotes.filter(({ fromId, toId }) => ![fromId, toId].every((id) => id === fill.id || id === dump.id)), note('wheels-there', dump.id, fill.id), note('wheels-back', fill.id, dump.id)]
    return tryPlan(given, { ...plan, legNotes }, { carriage: 'shuttle', fromId: candidate.fromId }, resolve)?.flow_gpm ?? 0
  }
  const far_mi = Math.max(LEAST_FAR_MI, (1.5 * hose_ft) / FEET_PER_MILE)
  const points: CurvePoint[] = []
  for (let i = 1; i <= POINT_COUNT; i++) {
    const distance_mi = (far_mi * i) / POINT_COUNT
    points.push({ distance_mi, relay_gpm: relay(distance_mi), shuttle_gpm: shuttle(distance_mi) })
    yield { doneShare: (0.8 * i) / POINT_COUNT }
  }
  const after = points.findIndex(({ relay_gpm, shuttle_gpm }) => shuttle_gpm > relay_gpm)
  if (after < 1) return { fromId: candidate.fromId, points }
  let near = points[after - 1]!
  let far = points[after]!
  for (let i = 0; i < FINER_COUNT; i++) {
    const distance_mi = (near.distance_mi + far.distance_mi) / 2
    const middle = { distance_mi, relay_gpm: relay(distance_mi), shuttle_gpm: shuttle(distance_mi) }
    if (middle.shuttle_gpm > middle.relay_gpm) far = middle
    else near = middle
    yield { doneShare: 0.8 + (0.2 * (i + 1)) / FINER_COUNT }
  }
  const drawn = [...points.slice(0, after), near, far, ...points.slice(after)]
  return { fromId: candidate.fromId, points: drawn, even: { distance_mi: near.distance_mi, flow_gpm: near.shuttle_gpm, because: far.relay_gpm < 0.5 * near.relay_gpm ? 'hose' : 'flow' } }
}

/** The largest flow of a relay over so much level ground: each pumper at the source in turn, the rest in the lay. */
function relayAt(given: Bundle, candidate: Candidate, equipment: Equipment, pumperIds: readonly string[], water: SourceWater, distance_mi: number): number {
  const { point } = candidate
  const far = { lat: point.lat - Math.sign(point.lat || 1) * ((distance_mi * FEET_PER_MILE * METRES_PER_FOOT) / METRES_PER_DEGREE), lon: point.lon }
  const most = pumperIds.reduce((most_gpm, sourceId) => {
    const lay = layAlong(equipment, candidate, [point, far], FIRE_GROUND, [sourceId, ...pumperIds.filter((id) => id !== sourceId)])
    if (!lay) return most_gpm
    const level = { ...lay, rise_ft: 0 }
    return Math.max(most_gpm, layFlow({ district: given.district, plan: { ...given.plan, fillSites: [], dumpSites: [], hoseLays: [level] } }, level).found?.most_gpm ?? 0)
  }, 0)
  return lastingFlow_gpm(water, most, given.plan.duration_s ?? defaults.duration_s.value)
}
