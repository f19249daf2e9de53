import { layFlow_gpm } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { distanceM } from '../geo'
import { FIRE_GROUND, findDraftingPump, type Bundle, type DumpSite } from '../plan'
import { METRES_PER_FOOT } from '../units'
import { defaults } from './defaults'
import type { ResolvedDumpSite } from './dump-site'
import { coefficientOfSize } from './hose-lay/lay-hose'
import { findPlace } from './legs'
import { findHoseOf, LEAST_SUPPLY_IN, type Stock } from './stock'

/** Nearer than this the pumper's own short lines reach. [ft] */
const BESIDE_FT = 50

/**
 * What the hose between a dump site and the fire ground may take from the flow.
 *
 * @param needed_gpm what the site is to send on, above 0: its part of the need, else of the plan's flow
 * @returns `dump-line-short` (warn) where the hose that was said passes less; where none was said, reckoned along the straight line and
 *   the bends of hose: `dump-hose-short` (warn) where the pumper carries less than that, `dump-hose-thin` (warn) where one line of the
 *   widest it carries passes less than needed, `dump-line-unsaid` (warn) where nothing is known of its hose and one 2.5 in line would
 */
export function lineToFireIssues(bundle: Bundle, { site, line }: Pick<ResolvedDumpSite, 'site' | 'line'>, needed_gpm: number): Issue[] {
  const subjects = site.pumperId === undefined ? [site.id] : [site.id, site.pumperId]
  if (line) return line.limitedBy === 'lay' && line.flow_gpm < needed_gpm ? [issue('dump-line-short', 'warn', subjects, { flow_gpm: line.flow_gpm, discharge_psi: line.discharge_psi, needed_gpm })] : []
  const away_ft = awayFromFire_ft(bundle, site)
  if (away_ft === undefined || away_ft < BESIDE_FT) return []
  const discharge_psi = defaults.dumpDischarge_psi.value
  const passes = (size_in: number) => layFlow_gpm({ size_in, length_ft: away_ft, coefficient: coefficientOfSize(bundle.district, size_in).coefficient }, discharge_psi, defaults.layOutlet_psi.value)
  const hose = supplyHoseOf(bundle, site.pumperId)
  if (!hose) {
    // Nobody knows what comes: the least that is laid as supply.
    const flow_gpm = passes(LEAST_SUPPLY_IN)
    return flow_gpm < needed_gpm ? [issue('dump-line-unsaid', 'warn', subjects, { away_ft, size_in: LEAST_SUPPLY_IN, flow_gpm, discharge_psi, needed_gpm })] : []
  }
  const carried_ft = hose.reduce((sum, { length_ft }) => sum + length_ft, 0)
  if (carried_ft < away_ft) return [issue('dump-hose-short', 'warn', subjects, { away_ft, carried_ft })]
  const size_in = Math.max(...hose.map((one) => one.size_in))
  const flow_gpm = passes(size_in)
  return flow_gpm < needed_gpm ? [issue('dump-hose-thin', 'warn', subjects, { away_ft, size_in, flow_gpm, discharge_psi, needed_gpm })] : []
}

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Hose from a dump site to the fire ground along the straight line, with its bends; undefined where nobody has said where the fire is. */
function awayFromFire_ft(docs: Docs, site: Pick<DumpSite, 'point'>): number | undefined {
  const fire = findPlace(docs, FIRE_GROUND)
  return fire && (distanceM(site.point, fire) / METRES_PER_FOOT) * defaults.layFactor.value
}

/** Lengths of hose are said by the section. [ft] */
const SECTION_FT = 50

/** A line to begin from when somebody says what lies from a dump site to the fire: the widest its pumper carries, as long as the way takes. */
export function likelySupplyLine(docs: Docs, site: Pick<DumpSite, 'point' | 'pumperId'>): { readonly size_in: number; readonly length_ft: number } {
  const hose = supplyHoseOf(docs, site.pumperId) ?? []
  return { size_in: Math.max(LEAST_SUPPLY_IN, ...hose.map(({ size_in }) => size_in)), length_ft: Math.max(1, Math.ceil((awayFromFire_ft(docs, site) ?? 0) / SECTION_FT)) * SECTION_FT }
}

function supplyHoseOf(docs: Pick<Bundle, 'district'>, pumperId: string | undefined): Stock[] | undefined {
  const pump = findDraftingPump(docs, pumperId)
  const hose = pump && findHoseOf(docs, pump)?.filter(({ size_in }) => size_in >= LEAST_SUPPLY_IN)
  return hose && hose.length > 0 ? hose : undefined
}
