import { draftCapacity, draftLimitHeight_in, portableTankCapacity_gal, portableTankVolume_gal, type PortableTank } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { findDraftingPump, type Bundle, type DumpSite } from '../plan'
import type { DumpSpec } from '../shuttle'
import { GALLONS_PER_CUBIC_FOOT } from '../units'
import { arrival } from './arrival'
import { defaults } from './defaults'
import { draftPlace, pumpAbility, pumperHydraulics } from './drafting'
import { numberKey, take, takeDefault, takeKnown, type Ledger } from './ledger'
import type { Ways } from './ways'

export type ResolvedDumpSite = { readonly site: DumpSite; readonly spec: DumpSpec; readonly pump_gpm: number; readonly issues: readonly Issue[] }

/** Flows at which the depth that loses the draft is tabled for the shuttle. */
const LIMIT_FLOWS_GPM = [0, 100, 250, 500, 750, 1000, 1500, 2000, 3000]

/**
 * A dump site as the shuttle sees it: tanks, positions, and the pumper that drafts from them.
 *
 * @param firstTender_s when the first tender arrives here: an unnamed portable tank comes with it
 */
export function resolveDumpSite(bundle: Bundle, ledger: Ledger, ways: Ways, site: DumpSite, firstTender_s: number | undefined, demandShare: number): ResolvedDumpSite {
  const issues: Issue[] = []
  const tanks = portableTanks(bundle, ledger, site)
  const capacity_gal = tanks.reduce((sum, tank) => sum + portableTankCapacity_gal(tank), 0)
  const smallest = tanks.toSorted((a, b) => portableTankVolume_gal(a, 6) - portableTankVolume_gal(b, 6))[0]
  if (site.draftLimit_in === undefined) take(ledger, site, 'draftLimit_in', undefined, { value: draftLimitHeight_in(500), mark: 'assumed', source: '4 in at 500 gpm, 8 in at 1,000', spreadShare: 0.4 })
  else takeKnown(ledger, site, 'draftLimit_in', site.draftLimit_in)
  const limitFactor = ledger.factors.get(numberKey(site.id, 'draftLimit_in')) ?? 1
  const draftLimit = LIMIT_FLOWS_GPM.map((flow_gpm) => ({
    flow_gpm,
    volume_gal: smallest ? tanks.reduce((sum, tank) => sum + portableTankVolume_gal(tank, (site.draftLimit_in ?? draftLimitHeight_in(flow_gpm)) * limitFactor), 0) : 0,
  }))

  const pump = findDraftingPump(bundle, site.pumperId)
  const reached = pump ? arrival(bundle, ledger, ways, pump, site.id) : undefined
  let pumpArrive_s = firstTender_s ?? 0
  if (reached && 'code' in reached) issues.push({ ...reached, severity: 'block' })
  else if (reached) {
    pumpArrive_s = reached.arrive_s
    issues.push(...reached.issues)
  }
  const tankArrive_s = Math.min(firstTender_s ?? pumpArrive_s, pumpArrive_s)
  const ready_s = tankArrive_s + take(ledger, site, 'setUp_s', site.setUp_s, defaults.dumpSetUp_s)
  const pumpReady_s = Math.max(ready_s, pumpArrive_s + take(ledger, site, 'pumpSetUp_s', site.pumpSetUp_s, defaults.pumpSetUp_s))

  let pump_gpm = pump?.rated_gpm ? 0 : takeDefault(ledger, site.id, 'dumpPump_gpm', defaults.dumpPump_gpm)
  if (pump?.rated_gpm) {
    const hydraulics = pumperHydraulics(pump)
    const size_in = pump.kind === 'pumper' ? (pump.suction_in ?? defaults.suctionSize_in.value) : defaults.suctionSize_in.value
    pump_gpm = pumpAbility(ledger, pump) * draftCapacity({
      pumper: hydraulics,
      suction: { size_in, length_ft: defaults.suctionLength_ft.value, lineCount: 1, strainer: 'low-level' },
      place: draftPlace(ledger, bundle.district, take(ledger, site, 'dumpLift_ft', undefined, defaults.dumpLift_ft), undefined),
      ask: { discharge_psi: take(ledger, site, 'dumpDischarge_psi', undefined, defaults.dumpDischarge_psi) },
    }).flow_gpm
  } else issues.push(issue('dump-pumper-assumed', 'warn', [site.id], { rated_gpm: pump_gpm }))

  return {
    site, pump_gpm, issues,
    spec: {
      id: site.id, ready_s, pumpReady_s, capacity_gal, draftLimit, demandShare,
      positionCount: site.positionCount ?? 1,
      reprime_s: take(ledger, site, 'reprime_s', site.reprime_s, defaults.reprime_s),
      booster_gal: site.pumperId === bundle.plan.firstDueId ? 0 : (pump?.tank_gal ?? 0),
    },
  }
}

/** The site's tanks as they stand; a slope is given as the fall across the tank. */
function portableTanks({ district }: Bundle, ledger: Ledger, site: DumpSite): PortableTank[] {
  const named = (site.portableTankIds ?? []).flatMap((id) => {
    const item = district.equipment.find((equipment) => equipment.id === id)
    return item?.kind === 'portableTank'
      ? [{ capacity_gal: takeKnown(ledger, item, 'capacity_gal', item.capacity_gal), height_in: take(ledger, item, 'height_in', item.height_in, defaults.portableTankHeight_in) }]
      : []
  })
  const standing = named.length > 0 || site.tankCapacity_gal === undefined
    ? named
    : [{ capacity_gal: takeKnown(ledger, site, 'tankCapacity_gal', site.tankCapacity_gal), height_in: take(ledger, site, 'tankHeight_in', site.tankHeight_in, defaults.portableTankHeight_in) }]
  return standing.map((tank) => (site.tankSlope_in ? sloped(tank, site.tankSlope_in) : tank))
}

/** A square floor's side carries the fall. */
function sloped(tank: PortableTank, fall_in: number): PortableTank {
  const side_ft = Math.sqrt(tank.capacity_gal / GALLONS_PER_CUBIC_FOOT / (tank.height_in / 12))
  return { ...tank, slopeShare: Math.min(0.5, fall_in / 12 / side_ft) }
}
