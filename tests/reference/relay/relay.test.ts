import { planRelay, ratingNeeded_gpm, type LaySegment, type RelaySpec } from '@/lib/relay'
import { layLine } from '@/lib/relay/lay-line'
import { findFarthest } from '@/lib/relay/reach'
import type { Given } from '../reference-case'
import { testCases } from '../test-cases'
import { endless, endlessSource } from '../../unit/relay/lays'

const segment = (g: Given, length_ft: number, working_psi: number): LaySegment =>
  ({ length_ft, lines: g.numbers('coefficients').map((coefficient) => ({ size_in: 3, coefficient, working_psi })) })

const spec = (lay: readonly LaySegment[], more: Partial<RelaySpec> = {}): RelaySpec =>
  ({ mode: 'closed', source: endlessSource, pumpers: [], lay, profile: [], ...more })

/** Discharge pressure of the source pumper when it carries a flow. */
const sourceAt = (flow_gpm: number, relay: RelaySpec): number => planRelay(relay, { wanted_gpm: flow_gpm }).pumpers[0]?.discharge_psi ?? NaN

/** Ratings pumps are built with. Capacities table (memory, moderate); steps of 250 above 750 (seen). */
const built_gpm = [250, 500, 750, 1000, 1250, 1500, 1750, 2000]

const plain = [{ length_ft: 1000, lines: [{ size_in: 5 }] }]

const laws: Readonly<Record<string, (g: Given) => number>> = {
  relayReach_ft: (g) => {
    const working_psi = g.number('discharge_psi')
    return findFarthest(layLine([segment(g, 100_000, working_psi)], []), { flow_gpm: g.number('flow_gpm'), from_ft: 0, head_psi: working_psi, end_psi: g.number('residual_psi'), least_psi: 0 }) ?? NaN
  },
  relayFlow_gpm: (g) => planRelay(spec([segment(g, g.number('length_ft'), g.number('discharge_psi'))], {
    wanted: { residual_psi: g.number('residual_psi'), outlet_psi: g.number('residual_psi') },
    pumpers: Array.from({ length: g.number('pumperCount') }, (_, i) => ({ id: `p${i}`, pumper: endless })),
  })).flow_gpm,
  relaySource_psi: (g) => sourceAt(g.number('flow_gpm'), spec([segment(g, g.number('length_ft'), g.number('working_psi'))], { wanted: { outlet_psi: g.number('residual_psi') } })),
  ratingNeeded_gpm: (g) => ratingNeeded_gpm(g.number('flow_gpm'), g.number('discharge_psi')),
  pumpSizeNeeded_gpm: (g) => built_gpm.find((size) => size >= ratingNeeded_gpm(g.number('flow_gpm'), g.number('discharge_psi')) - 1) ?? NaN,
  elevationCost_psi: (g) => sourceAt(300, spec(plain, { profile: [{ distance_ft: 0, height_ft: 0 }, { distance_ft: 1000, height_ft: g.number('rise_ft') }] })) - sourceAt(300, spec(plain)),
  applianceCost_psi: (g) => {
    const appliances = Array.from({ length: g.number('count') }, (_, i) => ({ at_ft: 300 + 100 * i, kind: 'fitting' as const }))
    return sourceAt(g.number('flow_gpm'), spec(plain.map((one) => ({ ...one, appliances })))) - sourceAt(g.number('flow_gpm'), spec(plain))
  },
}

testCases('relay/relay.json', laws)
