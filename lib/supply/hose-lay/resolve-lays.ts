import { issue, type Issue } from '../../issue'
import { FIRE_GROUND, findDraftingPump, isCounted, type Bundle, type Lay } from '../../plan'
import { pumperStops } from '../../relay'
import type { FeedSpec } from '../../shuttle'
import { arrival } from '../arrival'
import { defaults } from '../defaults'
import { noted, numberKey, type Ledger } from '../ledger'
import { isOpenToLay } from '../names-water'
import { seasonDrop } from '../season'
import { doubtedWater, sourceWater, type SourceWater } from '../source'
import { spreadByMark } from '../spread'
import type { Ways } from '../ways'
import { findLayHeights } from './lay-key'
import { isHoseLacking } from './hose-needed'
import { draftIssues, layFlow, riseDoubt, type LayFlow } from './lay-flow'
import { sourceOfLay } from './source-of-lay'

/** A hose lay that counts in the plan's flow. */
export type ResolvedLay = {
  readonly lay: Lay
  readonly flow_gpm: number
  /** All its pumpers are at its source, or the officer's own start. */
  readonly start_s: number
  /** Laid, charged and at its flow, after dispatch. */
  readonly ready_s: number
  readonly setUp_s: number
  readonly outlet_psi: number
  /** Of those at hand the ones that pump. */
  readonly pumperIds: readonly string[]
  /** Where its water comes from, and what is there. */
  readonly sourceId?: string
  readonly water: SourceWater
}

export type ResolvedLays = { readonly lays: readonly ResolvedLay[]; readonly issues: readonly Issue[] }

/** Half the range of a set-up time whose rates nobody has timed. Common practice, no source. */
const SET_UP_SPREAD = 0.4
const WIDEST_SPREAD = 0.9

/**
 * The hose lays that count in a plan: what each brings, and from when.
 *
 *   ready = the last of its pumpers at its source, or the start entered where that is later  +  set-up time of the lay
 *
 * A lay that cannot be worked out, whose pumper stands elsewhere in the plan too, or whose hose the district has not got or lays before it
 * have taken, brings nothing, and that is said.
 *
 * @param ledger notes the flow (by the doubt of its heights, a tenth at least) and the set-up time
 * @returns lays; issues `lay-not-counted` (warn) with its reasons, `lay-rise-doubt` (note), the warnings of compileLay, relayResult, hoseNeeded and drafting, and those of arrival
 */
export function resolveLays(bundle: Bundle, ledger: Ledger, ways: Ways): ResolvedLays {
  const issues: Issue[] = []
  const lays = (bundle.plan.hoseLays ?? []).filter(isCounted).flatMap((lay): ResolvedLay[] => {
    const solved = solve(bundle, lay)
    const out = (reasons: readonly Issue[]): ResolvedLay[] => {
      issues.push(issue('lay-not-counted', 'warn', [lay.id]), ...reasons.map((one) => ({ ...one, severity: 'warn' as const })))
      return []
    }
    const { compiled, found } = solved
    const blocks = compiled.issues.filter(({ code, severity }) => severity === 'block' || code === 'lay-pumper-elsewhere')
    const reasons = [...blocks, ...(found?.needed.issues ?? []).filter(isHoseLacking)]
    if (reasons.length > 0 || !found) return out(reasons)
    if (!found.time) return out(found.result.issues)
    const starts: number[] = [lay.start_s ?? 0]
    for (const { id } of found.result.pumpers) {
      const pump = findDraftingPump(bundle, id)
      const reached = pump && arrival(bundle, ledger, ways, pump, lay.id)
      if (!reached) continue
      if ('code' in reached) return out([reached])
      issues.push(...reached.issues)
      starts.push(reached.arrive_s)
    }
    const { flow_gpm } = found.result
    const { doubted, most_gpm, time } = found
    for (const [key, assumption] of compiled.ledger.assumptions) if (!ledger.assumptions.has(key)) ledger.assumptions.set(key, assumption)
    issues.push(...[...compiled.issues, ...found.result.issues, ...found.needed.issues, ...draftIssues(compiled, found.result)].filter(({ severity }) => severity === 'warn'))
    if (doubted) issues.push(riseDoubt(lay.id, compiled.ground.rise_ft, doubted))
    const lost = doubted && most_gpm > 0 ? Math.max(0, 1 - doubted.most_gpm / most_gpm) : 0
    const known = { itemId: lay.id, isDefault: false as const }
    const brings_gpm = noted(ledger, numberKey(lay.id, 'flow_gpm'), { ...known, field: 'flow_gpm', value: flow_gpm, mark: 'computed', spreadShare: Math.min(WIDEST_SPREAD, Math.max(spreadByMark.computed, lost)) })
    const setUp_s = noted(ledger, numberKey(lay.id, 'laySetUp_s'), { ...known, field: 'laySetUp_s', value: time.ready_s, mark: 'assumed', spreadShare: SET_UP_SPREAD })
    const start_s = Math.max(...starts)
    return [{ lay, flow_gpm: brings_gpm, start_s, setUp_s, ready_s: start_s + setUp_s, pumperIds: found.result.pumpers.map(({ id }) => id), outlet_psi: lay.outlet_psi ?? defaults.layOutlet_psi.value, ...waterOf(bundle, ledger, lay) }]
  })
  return { lays, issues }
}

/** Solved once for the same documents: doubt and advice compile a plan many times. */
const kept = new WeakMap<Lay, { readonly bundle: Pick<Bundle, 'district' | 'plan' | 'layHeights'>; readonly solved: LayFlow }>()

function solve(bundle: Bundle, lay: Lay): LayFlow {
  const known = kept.get(lay)
  if (known && known.bundle.district === bundle.district && known.bundle.plan === bundle.plan && known.bundle.layHeights === bundle.layHeights) return known.solved
  const { district, plan, layHeights } = bundle
  const solved = layFlow(bundle, lay, findLayHeights(bundle, lay))
  kept.set(lay, { bundle: { district, plan, ...(layHeights && { layHeights }) }, solved })
  return solved
}

/** What a lay of a plan carries when each of its pumpers in turn stops and its water goes round it; nothing without the one at the source. [gpm] */
export function layStops(bundle: Bundle, lay: Lay): { readonly id: string; readonly flow_gpm: number }[] {
  const { compiled: { spec }, found } = solve(bundle, lay)
  if (!spec || !found || found.result.flow_gpm <= 0) return []
  return pumperStops(spec, found.result.placed, found.result.flow_gpm).map(({ id, flow_gpm }) => ({ id, flow_gpm }))
}

function waterOf(bundle: Bundle, ledger: Ledger, lay: Lay): Pick<ResolvedLay, 'water' | 'sourceId'> {
  const source = sourceOfLay(bundle, lay.fromId)
  return { water: doubtedWater(ledger, source, sourceWater(source, seasonDrop(source, bundle.plan.season))), ...(source && { sourceId: source.id }) }
}

/**
 * The lay that is a fill site's own supply: the first to stand, where no pumper and no measured rate is there.
 */
export function findOwnSupply(lays: readonly ResolvedLay[], site: { readonly id: string; readonly pumperId?: string | undefined; readonly rate_gpm?: number | undefined }): ResolvedLay | undefined {
  if (!isOpenToLay(site)) return undefined
  return lays.filter(({ lay }) => lay.toId === site.id).sort((a, b) => a.ready_s - b.ready_s)[0]
}

/** The lays as the shuttle sees them; one that is a fill site's own supply is in that site. */
export function feedsOf({ plan }: Bundle, lays: readonly ResolvedLay[]): FeedSpec[] {
  const own = new Set(plan.fillSites.flatMap((site) => findOwnSupply(lays, site)?.lay.id ?? []))
  return lays.filter(({ lay }) => !own.has(lay.id)).map(({ lay, ready_s, flow_gpm, sourceId, water: { usable_gal, inflow_gpm } }) => {
    const dumpIndex = plan.dumpSites.findIndex(({ id }) => id === lay.toId)
    const fillIndex = plan.fillSites.findIndex(({ id }) => id === lay.toId)
    return {
      id: lay.id, ready_s, flow_gpm,
      ...(lay.toId !== FIRE_GROUND && dumpIndex >= 0 && { dumpIndex }),
      ...(lay.toId !== FIRE_GROUND && dumpIndex < 0 && fillIndex >= 0 && { fillIndex }),
      ...(usable_gal !== undefined && { usable_gal }),
      ...(inflow_gpm !== undefined && { inflow_gpm }),
      ...(usable_gal !== undefined && sourceId !== undefined && { sourceId }),
    }
  })
}
