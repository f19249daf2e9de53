import { draftSupply, flowThroughLay, type FlowThroughLay, type StrainerKind } from '../hydraulics'
import type { Bundle, DraftingPump, DumpSite } from '../plan'
import { defaults } from './defaults'
import { draftPlace, pumpAbility, pumperHydraulics } from './drafting'
import { coefficientOfSize } from './hose-lay/lay-hose'
import { take, takeDefault, type Ledger } from './ledger'
import { findStrainersOf } from './stock'

/** What is sent on from a dump site; `line` where somebody has said what hose lies from there to the fire. */
export type DumpPumping = { readonly pump_gpm: number; readonly line?: FlowThroughLay }

/**
 * What the pumper at a dump site draws from the portable tank and sends to the fire ground.
 *
 * With the hose to the fire said, as much as goes through it; without, what the pumper gives at the assumed discharge pressure, which is
 * as if that pressure were enough.
 *
 * @param pump absent, or without a rating: a flow is assumed, through the hose if that is said
 */
export function dumpPumping(bundle: Bundle, ledger: Ledger, site: DumpSite, pump: DraftingPump | undefined): DumpPumping {
  const lay = site.supplyLine && { ...site.supplyLine, coefficient: coefficientOfSize(bundle.district, site.supplyLine.size_in).coefficient, rise_ft: site.supplyLineRise_ft ?? 0 }
  const maxDischarge_psi = pump?.rated_gpm || lay ? take(ledger, site, 'dumpDischarge_psi', undefined, defaults.dumpDischarge_psi) : 0
  const through = (supply_gpm: (discharge_psi: number) => number) =>
    lay && flowThroughLay({ supply_gpm, maxDischarge_psi, lay, outlet_psi: take(ledger, site, 'layOutlet_psi', undefined, defaults.layOutlet_psi) })
  if (!pump?.rated_gpm) {
    const assumed_gpm = takeDefault(ledger, site.id, 'dumpPump_gpm', defaults.dumpPump_gpm)
    const line = through(() => assumed_gpm)
    return { pump_gpm: line?.flow_gpm ?? assumed_gpm, ...(line && { line }) }
  }
  const size_in = pump.kind === 'pumper' ? (pump.suction_in ?? defaults.suctionSize_in.value) : defaults.suctionSize_in.value
  const drafted = draftSupply({
    pumper: pumperHydraulics(pump),
    suction: { size_in, length_ft: defaults.suctionLength_ft.value, lineCount: 1, strainer: dumpStrainer(bundle, pump) },
    place: draftPlace(ledger, bundle.district, take(ledger, site, 'dumpLift_ft', undefined, defaults.dumpLift_ft), undefined),
  })
  const ability = pumpAbility(ledger, pump)
  const supply_gpm = (discharge_psi: number) => ability * drafted(discharge_psi)
  const line = through(supply_gpm)
  return line ? { pump_gpm: line.flow_gpm, line } : { pump_gpm: supply_gpm(maxDischarge_psi) }
}

/** The strainer that lies in the tank: a low-level one, unless the pumper is known to bring others only. */
function dumpStrainer(docs: Pick<Bundle, 'district'>, pump: DraftingPump): StrainerKind {
  const brought = findStrainersOf(docs, pump)
  return brought.length === 0 || brought.includes('low-level') ? 'low-level' : brought.includes('floating') ? 'floating' : 'barrel'
}
