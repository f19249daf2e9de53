import { findApparatus, findStation, type Apparatus } from '../../plan'
import type { CompiledPlan } from '../compile-plan'
import { defaults } from '../defaults'
import type { Working, WorkingInput } from '../working'
import { isWay } from '../ways'
import { explainWay } from './explain-way'
import { computed, given, worked, working } from './inputs'

/** When a vehicle first stands at a place: turnout and the way from its station. */
export function explainArrival(compiled: CompiledPlan, unitId: string | undefined, toId: string): Working | undefined {
  const { bundle, ledger, ways } = compiled
  const unit = findApparatus(bundle, unitId)
  if (!unit) return undefined
  const station = findStation(bundle, unit.stationId)
  if (!station) return working('arrival-assumed', 'arrive_s', defaults.arrival_s.value, defaults.arrival_s.source, [])
  const row = ways.rows.find(({ use }) => use.apparatusId === unit.id && use.fromId === station.id && use.toId === toId)
  if (!row || !isWay(row.way)) return undefined
  const turnout = turnoutOf(compiled, unit, station)
  return working('arrival', 'arrive_s', turnout.value + row.way.travel_s, '', [turnout, worked('travel_s', explainWay(compiled, row.use, row.way))])

  function turnoutOf({ ledger: noted }: CompiledPlan, vehicle: Apparatus, place: NonNullable<typeof station>): WorkingInput {
    if (vehicle.turnout_s !== undefined) return given(noted, vehicle, 'turnout_s', vehicle.turnout_s)
    return given(ledger, place, 'turnout_s', place.turnout_s ?? defaults.turnout_s.value)
  }
}

/** When water first reaches the fire: the first engine's arrival and its first line. */
export function explainFirstWater(compiled: CompiledPlan, firstWater_s: number): Working {
  const { bundle: { plan }, ledger } = compiled
  const arrival = explainArrival(compiled, plan.firstDueId, 'fireGround')
  return working('first-water', 'firstWater_s', firstWater_s, '', [
    ...(arrival ? [worked('arrive_s', arrival)] : []),
    given(ledger, plan, 'firstLine_s', plan.firstLine_s ?? defaults.firstLine_s.value),
  ])
}

/** Supply ready: the dump site set, a pumper drafting there, and the first load or the reserve in the tank. */
export function explainSupplyReady(compiled: CompiledPlan, supplyReady_s: number): Working {
  const inputs = compiled.dumps.flatMap(({ site, spec }): WorkingInput[] => {
    const pumper = explainArrival(compiled, site.pumperId, site.id)
    const tenders = compiled.tenders.filter(({ dumpSiteId }) => dumpSiteId === site.id)
    const first = tenders.toSorted((a, b) => (a.spec.arrive_s ?? Infinity) - (b.spec.arrive_s ?? Infinity))[0]
    const tender = first && explainArrival(compiled, first.tender.id, site.id)
    return [
      ...(pumper ? [worked('pumperArrives_s', pumper)] : []),
      given(compiled.ledger, site, 'pumpSetUp_s', site.pumpSetUp_s ?? defaults.pumpSetUp_s.value),
      ...(tender ? [worked('tenderArrives_s', tender)] : []),
      given(compiled.ledger, site, 'setUp_s', site.setUp_s ?? defaults.dumpSetUp_s.value),
      computed('pumpReady_s', spec.pumpReady_s),
    ]
  })
  return working('supply-ready', 'supplyReady_s', supplyReady_s, '', inputs)
}
