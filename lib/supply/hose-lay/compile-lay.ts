import { distanceM } from '../../geo'
import type { DraftAsk } from '../../hydraulics'
import { issue, type Issue } from '../../issue'
import { findApparatus, findDraftingPump, findDraftSite, findSource, type Bundle, type DraftingPump, type Lay } from '../../plan'
import { profileForLay, type RelaySource, type RelaySpec } from '../../relay'
import { feetFromMetres } from '../../units'
import { defaults } from '../defaults'
import { draftPlace, liftIssues, liftOf, pumperHydraulics, suctionSetup } from '../drafting'
import { startLedger, take, type Ledger } from '../ledger'
import { findPlace } from '../legs'
import { seasonDrop } from '../season'
import { suctionNotCarried } from '../stock'
import { layGround, type LayGround } from './lay-ground'
import type { LayPlaces } from './lay-key'
import { layHose, type LaidHose } from './lay-hose'
import { sourceOfLay } from './source-of-lay'

type Docs = Pick<Bundle, 'district' | 'plan'>

/** A hose lay turned into numbers for lib/relay, and what stands behind them. */
export type CompiledLay = {
  readonly lay: Lay
  /** Absent where an issue blocks. */
  readonly spec?: RelaySpec
  readonly ledger: Ledger
  readonly ground: LayGround
  readonly hose?: LaidHose
  /** Lift at the source, where it is drafted from. */
  readonly lift_ft?: number
  readonly draft?: Omit<DraftAsk, 'ask'>
  readonly sourceReady_s: number
  readonly issues: readonly Issue[]
}

/**
 * Compiles a hose lay of a plan.
 *
 * @param docs    district and plan
 * @param lay     one of the plan's
 * @param places heights along the lay's points, from profileAlong, and where pumpers can stand on roads; absent: neither is known
 * @returns numbers; issues `lay-without-pumper`, `lay-pump-cannot`, `pumper-without-rating`, `lay-source-missing`, `lay-hydrant-untested`,
 *   `lay-pumper-twice` (block), `lift-assumed`, `lift-doubtful`, `lay-pumper-elsewhere`, `lay-stands-unknown`, `lay-end-off`, `lay-heights-unread`, `suction-not-carried` (warn), and those of layGround and layHose
 */
export function compileLay(docs: Docs, lay: Lay, places?: LayPlaces): CompiledLay {
  const ledger = startLedger()
  const ground = layGround(lay, places && places.points.length > 0 ? places.points : undefined)
  // The district has elevation, and what it says of this way did not come with the plan.
  const isUnread = docs.district.terrain !== undefined && !(places && places.points.length > 0)
  const issues: Issue[] = [...(isUnread ? [issue('lay-heights-unread', 'warn', [lay.id]), ...ground.issues.filter(({ code }) => code !== 'lay-heights-none')] : ground.issues), ...endsOff(docs, lay)]
  const pumps = findPumps(docs, lay, issues)
  const sourceReady_s = take(ledger, lay, 'setUp_s', undefined, defaults.fillSetUp_s)
  const found = findLaySource(docs, ledger, lay, pumps[0], issues)
  const base = { lay, ledger, ground, sourceReady_s, ...(found?.lift_ft !== undefined && { lift_ft: found.lift_ft }), ...(found?.source.kind === 'draft' && { draft: found.source.draft }) }
  if (issues.some(({ severity }) => severity === 'block') || !found) return { ...base, issues }
  const hose = layHose(docs.district, ledger, lay, ground.way_ft)
  issues.push(...hose.issues)
  const roads_ft = lay.standsOnRoads ? places?.stands_ft : undefined
  if (lay.standsOnRoads && !roads_ft) issues.push(issue('lay-stands-unknown', 'warn', [lay.id]))
  const spread = profileForLay(ground.profile, hose.hose_ft, roads_ft ?? ground.points_ft)
  issues.push(...spread.issues.map((one) => ({ ...one, subjectIds: [lay.id] })))
  const { residual_psi, outlet_psi } = lay
  return {
    ...base, hose, issues,
    spec: {
      mode: lay.mode ?? 'closed', source: { ...found.source, ...mostOf(pumps[0]) }, lay: hose.segments, profile: spread.profile,
      pumpers: pumps.slice(1).map((pump) => ({ id: pump.id, pumper: pumperHydraulics(pump), ...mostOf(pump) })),
      ...((roads_ft ?? lay.standsAtPoints) && { stations_ft: spread.places_ft }),
      wanted: { ...(residual_psi !== undefined && { residual_psi }), ...(outlet_psi !== undefined && { outlet_psi }) },
    },
  }
}

/** An end of a lay that lies farther than this from its place no longer leads there. Assumed. */
const END_OFF_FT = 300

/** Places that were moved after the lay was drawn. */
function endsOff(docs: Docs, lay: Lay): Issue[] {
  const from = findDraftSite(docs, lay.fromId)?.point ?? findSource(docs, lay.fromId)?.point
  const to = findPlace(docs, lay.toId)
  return [[from, lay.points[0], lay.fromId] as const, [to, lay.points.at(-1), lay.toId] as const].flatMap(([place, end, id]) => {
    const off_ft = place && end ? feetFromMetres(distanceM(place, end)) : 0
    return off_ft > END_OFF_FT ? [issue('lay-end-off', 'warn', [lay.id, id], { off_ft })] : []
  })
}

/** Highest pressure a pump is run at, where its document says. */
const mostOf = (pump: DraftingPump | undefined) => (pump?.discharge_psi === undefined ? {} : { mostDischarge_psi: pump.discharge_psi })

/** The pumps of the lay, the source's first; what cannot pump is said. */
function findPumps(docs: Docs, lay: Lay, issues: Issue[]): DraftingPump[] {
  if (lay.pumperIds.length === 0) issues.push(issue('lay-without-pumper', 'block', [lay.id]))
  const elsewhere = new Map<string, string>()
  for (const site of [...docs.plan.fillSites, ...docs.plan.dumpSites]) if (site.pumperId !== undefined) elsewhere.set(site.pumperId, site.id)
  for (const other of docs.plan.hoseLays ?? []) if (other.id !== lay.id) for (const id of other.pumperIds) elsewhere.set(id, other.id)
  return lay.pumperIds.flatMap((id, i) => {
    const pump = findDraftingPump(docs, id)
    const place = elsewhere.get(id)
    if (lay.pumperIds.indexOf(id) !== i) issues.push(issue('lay-pumper-twice', 'block', [id, lay.id]))
    else if (!pump) issues.push(issue(findApparatus(docs, id) ? 'lay-pump-cannot' : 'id-unresolved', 'block', [findApparatus(docs, id) ? id : lay.id], { kind: 'apparatus', id }))
    else if (!pump.rated_gpm) issues.push(issue('pumper-without-rating', 'block', [id]))
    else if (place !== undefined) issues.push(issue('lay-pumper-elsewhere', 'warn', [id, place]))
    return pump?.rated_gpm ? [pump] : []
  })
}

/** What the first pumper gives into the hose: at draft by the laws of drafting, at a pressure hydrant by its flow test. */
function findLaySource(docs: Docs, ledger: Ledger, lay: Lay, pump: DraftingPump | undefined, issues: Issue[]): { readonly source: RelaySource; readonly lift_ft?: number } | undefined {
  const draftSite = findDraftSite(docs, lay.fromId)
  const water = sourceOfLay(docs, lay.fromId)
  if (!draftSite && !water) issues.push(issue('lay-source-missing', 'block', [lay.id]))
  if (!pump || (!draftSite && !water)) return undefined
  if (water?.kind === 'pressureHydrant') {
    const { static_psi, residual_psi, test_gpm } = water
    if (static_psi === undefined || residual_psi === undefined || !test_gpm || static_psi <= residual_psi) {
      issues.push(issue('lay-hydrant-untested', 'block', [water.id]))
      return undefined
    }
    return { source: { id: pump.id, kind: 'hydrant', pumper: pumperHydraulics(pump), hydrant: { static_psi, residual_psi, flow_gpm: test_gpm } } }
  }
  const drop = seasonDrop(water, docs.plan.season)
  issues.push(...drop.issues)
  const lift = liftOf(ledger, lay, draftSite, water, drop)
  const { lift_ft } = lift
  issues.push(...liftIssues(lift, draftSite?.id ?? lay.id))
  const suction = suctionSetup(ledger, lay, draftSite, pump)
  const bare = suctionNotCarried(docs, pump, suction, water, lay.id)
  if (bare) issues.push(bare)
  const draft = { pumper: pumperHydraulics(pump), suction, place: draftPlace(ledger, docs.district, lift_ft, water?.water_degF) }
  return { source: { id: pump.id, kind: 'draft', draft }, lift_ft }
}
