import { draftLimitHeight_in, jetSiphonFlow, portableTankCapacity_gal, portableTankVolume_gal, type FlowThroughLay, type PortableTank } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { findDraftingPump, findTender, type Bundle, type DumpSite, type Tender } from '../plan'
import type { DumpSpec } from '../shuttle'
import { GALLONS_PER_CUBIC_FOOT, SECONDS_PER_MINUTE } from '../units'
import { arrival } from './arrival'
import { defaults } from './defaults'
import { dumpPumping } from './dump-pumper'
import { laterPlaces, placesOpen } from './fill-site'
import { numberKey, take, takeKnown, type Ledger } from './ledger'
import type { Staffed } from './staffing'
import type { Ways } from './ways'

export type ResolvedDumpSite = { readonly site: DumpSite; readonly spec: DumpSpec; readonly pump_gpm: number; readonly line?: FlowThroughLay; readonly issues: readonly Issue[] }

/** Flows at which the depth that loses the draft is tabled for the shuttle. */
const LIMIT_FLOWS_GPM = [0, 100, 250, 500, 750, 1000, 1500, 2000, 3000]

/**
 * A dump site as the shuttle sees it: tanks, positions, and the pumper that drafts from them.
 *
 * @param staffed when the people of each position are there; absent: nobody is counted
 * @param firstTender_s when the first tender arrives here: an unnamed portable tank comes with it
 */
export function resolveDumpSite(bundle: Bundle, ledger: Ledger, ways: Ways, site: DumpSite, firstTender_s: number | undefined, demandShare: number, staffed?: Staffed): ResolvedDumpSite {
  const issues: Issue[] = []
  const nurse = findTender(bundle, site.nurseId)
  const nursed = nurse && nurseTank(ledger, site, nurse)
  const standing = nurse ? [] : portableTanks(bundle, ledger, site)
  if (!nurse && isTankAssumed(site)) issues.push(issue('dump-tank-assumed', 'warn', [site.id], { capacity_gal: standing[0]?.capacity_gal ?? 0 }))
  const chain = chainOfTanks(ledger, bundle, site, standing)
  const drive_gpm = chain?.drive_gpm ?? 0
  const tanks = chain ? standing.slice(0, 1) : standing
  const capacity_gal = nursed?.capacity_gal ?? tanks.reduce((sum, tank) => sum + portableTankCapacity_gal(tank), 0)
  if (!nursed && site.draftLimit_in === undefined) take(ledger, site, 'draftLimit_in', undefined, { value: draftLimitHeight_in(500), mark: 'assumed', source: '4 in at 500 gpm, 8 in at 1,000', spreadShare: 0.4 })
  else if (site.draftLimit_in !== undefined) takeKnown(ledger, site, 'draftLimit_in', site.draftLimit_in)
  const limitFactor = ledger.factors.get(numberKey(site.id, 'draftLimit_in')) ?? 1
  // The drive water of jet siphons is drawn together with the flow to the fire.
  const draftLimit = nursed?.draftLimit ?? LIMIT_FLOWS_GPM.map((flow_gpm) => ({
    flow_gpm,
    volume_gal: tanks.reduce((sum, tank) => sum + portableTankVolume_gal(tank, (site.draftLimit_in ?? draftLimitHeight_in(flow_gpm + drive_gpm)) * limitFactor), 0),
  }))

  const pump = findDraftingPump(bundle, site.pumperId)
  const reached = pump ? arrival(bundle, ledger, ways, pump, site.id) : undefined
  let pumpArrive_s = firstTender_s ?? 0
  if (reached && 'code' in reached) issues.push({ ...reached, severity: 'block' })
  else if (reached) {
    pumpArrive_s = reached.arrive_s
    issues.push(...reached.issues)
  }
  const nurseReached = nurse ? arrival(bundle, ledger, ways, nurse, site.id) : undefined
  if (nurseReached && 'code' in nurseReached) issues.push({ ...nurseReached, severity: 'block' })
  else if (nurseReached) issues.push(...nurseReached.issues)
  const vesselArrive_s = nurseReached ? ('code' in nurseReached ? 0 : nurseReached.arrive_s) : Math.min(firstTender_s ?? pumpArrive_s, pumpArrive_s)
  const tankArrive_s = Math.max(vesselArrive_s, staffed?.placeAt_s[0] ?? 0)
  const ready_s = tankArrive_s + take(ledger, site, 'setUp_s', site.setUp_s, defaults.dumpSetUp_s)
  const pumpReady_s = Math.max(ready_s, pumpArrive_s + take(ledger, site, 'pumpSetUp_s', site.pumpSetUp_s, defaults.pumpSetUp_s))

  const pumping = dumpPumping(bundle, ledger, site, pump)
  if (!pump?.rated_gpm) issues.push(issue('dump-pumper-assumed', 'warn', [site.id], { rated_gpm: defaults.dumpPump_gpm.value }))
  // Drive water comes out of the same pump; through a hose that decides, the pump has it to spare.
  const spare_gpm = pumping.line?.limitedBy === 'lay' ? pumping.line.spare_gpm : 0
  const pump_gpm = Math.max(0, Math.min(pumping.pump_gpm, nursed?.outlet_gpm ?? Infinity) - Math.max(0, drive_gpm - spare_gpm))
  if (chain && drive_gpm > 0) issues.push(issue('siphon-drive-water', 'note', [site.id], { drive_gpm, transfer_gpm: chain.front.transfer_gpm }))
  if (site.tankLink === 'jetSiphon' && !chain) issues.push(issue('siphon-without-tanks', 'warn', [site.id]))
  // While the draft is lost the jets run on the pumper's own tank, at least as long as it re-primes.
  const reprime_s = take(ledger, site, 'reprime_s', site.reprime_s, defaults.reprime_s)
  const positionCount = placesOpen(site.positionCount ?? 1, staffed)
  return {
    site, pump_gpm, ...(pumping.line && { line: pumping.line }), issues,
    spec: {
      id: site.id, ready_s, pumpReady_s, capacity_gal, draftLimit, demandShare,
      positionCount,
      ...laterPlaces('positionAfter_s', positionCount, ready_s, staffed),
      ...(chain && { front: chain.front }),
      ...(nursed && { startsFull: true, intakeLimit_gpm: nursed.intake_gpm }),
      ...(site.leak_gpm ? { leak_gpm: site.leak_gpm } : {}),
      reprime_s,
      booster_gal: site.pumperId === bundle.plan.firstDueId ? 0 : Math.max(0, (pump?.tank_gal ?? 0) - (drive_gpm * reprime_s) / SECONDS_PER_MINUTE),
    },
  }
}

/** Part of a nurse tender's tank below which its outlet no longer gives its full flow. */
const NURSE_REST_SHARE = 0.2

/** A nurse tender as the site's tank: what it holds, takes and gives. Its outlet is taken to fail at once where the standard lets it begin to. */
function nurseTank(ledger: Ledger, site: DumpSite, nurse: Tender) {
  const capacity_gal = nurse.tank_gal ?? 0
  const outlet_gpm = take(ledger, site, 'outlet_gpm', site.outlet_gpm, defaults.nurseOutlet_gpm)
  return {
    capacity_gal, outlet_gpm,
    intake_gpm: take(ledger, site, 'intake_gpm', site.intake_gpm, defaults.nurseIntake_gpm),
    draftLimit: [{ flow_gpm: 0, volume_gal: 0 }, { flow_gpm: outlet_gpm, volume_gal: NURSE_REST_SHARE * capacity_gal }],
  }
}

/**
 * Tanks joined by jet siphons: tenders dump into all but the first, the pumper drafts from the first and drives the jets.
 *
 *   level difference: tanks in front half full, the one drafted from full
 *
 * Unmeasured, no siphon counts for more than the handbook's figure for its bore.
 */
function chainOfTanks(ledger: Ledger, { district }: Bundle, site: DumpSite, tanks: readonly PortableTank[]) {
  const [draft, ...front] = tanks
  if (site.tankLink !== 'jetSiphon' || !draft || front.length === 0) return undefined
  const kit = district.equipment.find((item) => item.kind === 'jetSiphon')
  const own = kit?.kind === 'jetSiphon' ? kit : undefined
  const tube_in = own?.size_in ?? defaults.siphonTube_in.value
  const line_in = own?.drive_in ?? defaults.siphonDrive_in.value
  // The jet's opening is taken as half its driving line.
  const flow = jetSiphonFlow({
    tube_in, jet_in: Math.min(line_in / 2, 0.9 * tube_in),
    drive_psi: take(ledger, site, 'siphonDrive_psi', undefined, defaults.siphonDrive_psi),
    fall_ft: -draft.height_in / 12 / 2,
  })
  const count = site.jetSiphonCount ?? front.length
  const most_gpm = defaults.siphonMost_gpm.value * (tube_in / defaults.siphonTube_in.value) ** 2
  const expected_gpm = count * Math.min(flow.transfer_gpm, most_gpm)
  const transfer_gpm = take(ledger, site, 'transfer_gpm', site.transfer_gpm || undefined, { ...defaults.siphonMost_gpm, value: Math.max(1, expected_gpm) })
  return { drive_gpm: count * flow.drive_gpm, front: { capacity_gal: front.reduce((sum, tank) => sum + portableTankCapacity_gal(tank), 0), transfer_gpm } }
}

/** Nobody has said which tank comes, nor how much it holds: one of the smallest ordinary size is counted on. */
const isTankAssumed = ({ portableTankIds = [], tankCapacity_gal }: DumpSite): boolean => portableTankIds.length === 0 && tankCapacity_gal === undefined

/** The site's tanks as they stand; a slope is given as the fall across the tank. */
function portableTanks({ district }: Bundle, ledger: Ledger, site: DumpSite): PortableTank[] {
  const named = (site.portableTankIds ?? []).flatMap((id) => {
    const item = district.equipment.find((equipment) => equipment.id === id)
    return item?.kind === 'portableTank'
      ? [{ capacity_gal: takeKnown(ledger, item, 'capacity_gal', item.capacity_gal), height_in: take(ledger, item, 'height_in', item.height_in, defaults.portableTankHeight_in) }]
      : []
  })
  const standing = named.length > 0
    ? named
    : [{
        capacity_gal: site.tankCapacity_gal === undefined ? take(ledger, site, 'tankCapacity_gal', undefined, defaults.portableTank_gal) : takeKnown(ledger, site, 'tankCapacity_gal', site.tankCapacity_gal),
        height_in: take(ledger, site, 'tankHeight_in', site.tankHeight_in, defaults.portableTankHeight_in),
      }]
  return standing.map((tank) => (site.tankSlope_in ? sloped(tank, site.tankSlope_in) : tank))
}

/** A square floor's side carries the fall. */
function sloped(tank: PortableTank, fall_in: number): PortableTank {
  const side_ft = Math.sqrt(tank.capacity_gal / GALLONS_PER_CUBIC_FOOT / (tank.height_in / 12))
  return { ...tank, slopeShare: Math.min(0.5, fall_in / 12 / side_ft) }
}
