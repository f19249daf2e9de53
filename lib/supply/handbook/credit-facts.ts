import { distanceM } from '../../geo'
import { FIRE_GROUND, findApparatus, findDraftingPump, findSource, findDraftSite, findStation, type Apparatus, type Bundle, type DraftingPump, type FillSite, type Source } from '../../plan'
import { feetFromMetres } from '../../units'
import { compilePlan, type CompiledPlan } from '../compile-plan'
import { findPlace } from '../legs'
import { isWay } from '../ways'
import { creditLine, creditRules, type CreditLine } from './credit-rules'
import type { HeldAsk } from './hold-flow'

/** Sources that a tender of the plan fills from. */
function usedSources({ bundle }: CompiledPlan): Source[] {
  const sources = bundle.plan.fillSites.flatMap((site) => findSource(bundle, site.sourceId ?? findDraftSite(bundle, site.draftSiteId)?.sourceId) ?? [])
  return [...new Map(sources.map((source) => [source.id, source])).values()]
}

/** A source whose water nobody has said, or a fill site that names no source. */
export type Unmeasured = { readonly itemId: string; readonly field: 'usable_gal' | 'sourceId' }

/** Where a line would stand on water that nobody knows: it is then not known either. */
export function unmeasuredWater({ fills }: CompiledPlan): Unmeasured[] {
  const all = fills.flatMap(({ site, source, water }): Unmeasured[] => {
    if (!source) return [{ itemId: site.id, field: 'sourceId' }]
    return water.usable_gal === undefined && water.hydrant_gpm === undefined ? [{ itemId: source.id, field: 'usable_gal' }] : []
  })
  return [...new Map(all.map((one) => [one.itemId, one])).values()]
}

/** Fill sites that name no source. */
const sourceless = ({ bundle }: CompiledPlan): string[] =>
  bundle.plan.fillSites.filter((site) => !findSource(bundle, site.sourceId ?? findDraftSite(bundle, site.draftSiteId)?.sourceId)).map(({ id }) => id)

const noSource = (code: 'volume' | 'certificate', ids: readonly string[]): CreditLine =>
  creditLine(code, 'unknown', { why: 'no-source', subjectIds: ids, missing: ids.map((itemId) => ({ itemId, field: 'sourceId' })) })

/** The sources hold 30,000 gal together, or give the rate for as long as it is asked. */
export function volumeLine(compiled: CompiledPlan): CreditLine {
  const { fills } = compiled
  const sources = usedSources(compiled)
  if (sources.length === 0) return noSource('volume', sourceless(compiled))
  let held_gal = 0
  const unknown: Source[] = []
  for (const source of sources) {
    const water = fills.find((fill) => fill.source?.id === source.id)?.water
    const lasting_gal = ((water?.hydrant_gpm ?? 0) + (water?.inflow_gpm ?? 0)) * (creditRules.duration_s / 60)
    if (water?.usable_gal === undefined && lasting_gal === 0) unknown.push(source)
    held_gal += (water?.usable_gal ?? 0) + lasting_gal
  }
  if (held_gal >= creditRules.volume_gal) return creditLine('volume', 'pass', { values: { held_gal }, subjectIds: sources.map(({ id }) => id) })
  if (unknown.length > 0) return creditLine('volume', 'unknown', { values: { held_gal }, subjectIds: unknown.map(({ id }) => id), missing: unknown.map(({ id }) => ({ itemId: id, field: 'usable_gal' })) })
  if (sourceless(compiled).length > 0) return noSource('volume', sourceless(compiled))
  return creditLine('volume', 'fail', { values: { held_gal }, subjectIds: sources.map(({ id }) => id) })
}

/** Apparatus that is sent on the first alarm without being asked for. */
export function dispatchLine(compiled: CompiledPlan, held: HeldAsk | undefined, isHeld: (without: CompiledPlan) => boolean): CreditLine {
  const { bundle } = compiled
  const used = usedUnits(compiled)
  if (used.length === 0) return creditLine('dispatch', 'unknown', { why: 'no-unit' })
  const unsaid = used.filter(({ mutualAid, stationId }) => mutualAid === undefined && !findStation(bundle, stationId)).map(({ id }) => id)
  if (unsaid.length > 0) return creditLine('dispatch', 'unknown', { why: 'no-station', subjectIds: unsaid, missing: unsaid.map((itemId) => ({ itemId, field: 'stationId' })) })
  const asked = used.filter(({ mutualAid, stationId }) => mutualAid ?? findStation(bundle, stationId)?.mutualAid ?? false)
  if (asked.length === 0) return creditLine('dispatch', 'pass', {})
  const subjectIds = asked.map(({ id }) => id)
  if (held?.isHeld && isHeld(withoutUnits(compiled, new Set<string>(subjectIds)))) return creditLine('dispatch', 'pass', { why: 'without-them', subjectIds })
  return creditLine('dispatch', 'unknown', { why: 'mutual-aid', subjectIds })
}

function usedUnits({ bundle }: CompiledPlan): Apparatus[] {
  const { plan } = bundle
  const ids = [plan.firstDueId, ...plan.fillSites.map(({ pumperId }) => pumperId), ...plan.dumpSites.map(({ pumperId }) => pumperId), ...plan.tenders.map(({ tenderId }) => tenderId)]
  const units = ids.flatMap((id) => findApparatus(bundle, id) ?? [])
  return [...new Map(units.map((unit) => [unit.id, unit])).values()]
}

/** The plan with only the tenders that come unasked; a pumper that must be asked for leaves its site without one, which blocks. */
function withoutUnits({ bundle }: CompiledPlan, out: ReadonlySet<string>): CompiledPlan {
  const { plan } = bundle
  const isOut = (id: string | undefined) => id !== undefined && out.has(id)
  const fillSites = plan.fillSites.filter(({ pumperId }) => !isOut(pumperId))
  const dumpSites = plan.dumpSites.filter(({ pumperId }) => !isOut(pumperId))
  const tenders = plan.tenders.filter(({ tenderId, fillSiteId, dumpSiteId }) => !isOut(tenderId)
    && (fillSiteId === undefined || fillSites.some(({ id }) => id === fillSiteId)) && (dumpSiteId === undefined || dumpSites.some(({ id }) => id === dumpSiteId)))
  const firstDueId = isOut(plan.firstDueId) ? undefined : plan.firstDueId
  return compilePlan({ ...bundle, plan: { ...plan, fillSites, dumpSites, tenders, firstDueId } })
}

/** Every pumper at the water has a test on record, and a young one where the day is given. */
export function testedLine({ bundle }: CompiledPlan, today: string | undefined): CreditLine {
  const unnamed = unnamedAt(bundle)
  const ids = [...bundle.plan.fillSites, ...bundle.plan.dumpSites].map(({ pumperId }) => pumperId)
  const pumps = [...new Map(ids.flatMap((id) => findDraftingPump(bundle, id) ?? []).map((pump) => [pump.id, pump])).values()]
  const untested = pumps.filter((pump) => lastTest(pump) === undefined)
  const old = today === undefined ? [] : pumps.filter((pump) => { const on = lastTest(pump); return on !== undefined && on < yearBefore(today) })
  if (old.length > 0) return creditLine('tested-pumps', 'fail', { why: 'test-old', subjectIds: old.map(({ id }) => id) })
  if (untested.length > 0)
    return creditLine('tested-pumps', 'unknown', { why: 'no-test', subjectIds: untested.map(({ id }) => id), missing: untested.map(({ id }) => ({ itemId: id, field: 'testedOn' })) })
  if (unnamed.length > 0 || pumps.length === 0) return creditLine('tested-pumps', 'unknown', { why: 'no-pumper', subjectIds: unnamed })
  if (today === undefined) return creditLine('tested-pumps', 'unknown', { why: 'no-day' })
  return creditLine('tested-pumps', 'pass', { subjectIds: pumps.map(({ id }) => id) })
}

/** Sites that draft and name no pumper: whoever comes may be tested or not. A hydrant needs none. */
function unnamedAt(bundle: Bundle): string[] {
  const isHydrant = (site: FillSite) => findSource(bundle, site.sourceId ?? findDraftSite(bundle, site.draftSiteId)?.sourceId)?.kind === 'pressureHydrant'
  const sites = [...bundle.plan.fillSites.filter((site) => !isHydrant(site)), ...bundle.plan.dumpSites]
  return sites.filter(({ pumperId }) => pumperId === undefined).map(({ id }) => id)
}

/** Day of the newest test on record; days as written sort as text. */
function lastTest({ testPoints = [], curvePoints = [] }: DraftingPump): string | undefined {
  return [...testPoints, ...curvePoints].flatMap(({ testedOn }) => testedOn ?? []).sort().at(-1)
}

const yearBefore = (day: string): string => `${String(Number(day.slice(0, 4)) - creditRules.testedWithin_y).padStart(4, '0')}${day.slice(4)}`

/** Every source has a certificate that it lasts in a drought. */
export function certificateLine(compiled: CompiledPlan): CreditLine {
  const sources = usedSources(compiled)
  const open = sourceless(compiled)
  if (sources.length === 0 || open.length > 0) return noSource('certificate', open)
  const bare = sources.filter(({ certifiedOn }) => certifiedOn === undefined)
  if (bare.length > 0) return creditLine('certificate', 'unknown', { subjectIds: bare.map(({ id }) => id), missing: bare.map(({ id }) => ({ itemId: id, field: 'certifiedOn' })) })
  return creditLine('certificate', 'pass', { subjectIds: sources.map(({ id }) => id) })
}

/** Road miles from the first-due engine's station to the fire ground. */
export function stationLine({ bundle, ways }: CompiledPlan): CreditLine {
  const { plan } = bundle
  const unit = findApparatus(bundle, plan.firstDueId)
  if (!unit) return creditLine('station', 'unknown', { why: 'no-engine', missing: [{ itemId: plan.id, field: 'firstDueId' }] })
  if (unit.stationId === undefined) return creditLine('station', 'unknown', { why: 'no-station', subjectIds: [unit.id], missing: [{ itemId: unit.id, field: 'stationId' }] })
  const way = ways.find(unit.id, unit.stationId, FIRE_GROUND)
  if (!isWay(way)) return creditLine('station', 'unknown', { why: 'no-way', subjectIds: [unit.id] })
  const values = { distance_mi: way.distance_mi }
  if (way.isStraight) return creditLine('station', 'unknown', { why: 'straight', values, subjectIds: [unit.stationId] })
  return creditLine('station', way.distance_mi <= creditRules.stationWithin_mi ? 'pass' : 'fail', { values, subjectIds: [unit.stationId] })
}

/** From where water is drawn for the attack, the portable tanks, to the fire ground, as the crow flies: hose lies longer. */
export function suctionLine({ bundle }: CompiledPlan): CreditLine {
  const fire = findPlace(bundle, FIRE_GROUND)
  const sites = bundle.plan.dumpSites
  if (!fire || sites.length === 0) return creditLine('suction-point', 'unknown', { why: fire ? 'no-dump-site' : 'no-fire-ground' })
  const distances_ft = sites.map(({ point }) => feetFromMetres(distanceM(point, fire)))
  const distance_ft = Math.max(...distances_ft)
  const far = sites.filter((_, i) => (distances_ft[i] ?? 0) > creditRules.suctionWithin_ft).map(({ id }) => id)
  return creditLine('suction-point', far.length > 0 ? 'fail' : 'pass', { values: { distance_ft }, subjectIds: far.length > 0 ? far : sites.map(({ id }) => id) })
}
