import type { HeldFlow, HauledCapacity, ShuttleRun } from '../../shuttle'
import { findHazard } from '../../plan'
import type { CompiledPlan } from '../compile-plan'
import { findNeededFlow } from '../demand'
import type { Working, WorkingInput } from '../working'
import { explainBayRate, explainDumpPump } from './explain-site'
import { explainLay } from './explain-lay'
import { explainHandFigure, explainRound } from './explain-tender'
import { computed, given, worked, working } from './inputs'

/** What the shuttle brings when nothing at the dump site blocks. */
export function explainHaul(compiled: CompiledPlan, haul: HauledCapacity): Working {
  return working('hauled-capacity', 'flow_gpm', haul.hauledCapacity_gpm, 'simulation, dumping never blocked: loads over the time of whole rounds', [
    computed('roundCount', haul.roundCount),
    ...compiled.tenders.map((tender, index) => worked('tender_gpm', working('tender-haul', 'flow_gpm', haul.byTender_gpm[index] ?? 0, '', [
      computed('usable_gal', tender.spec.usable_gal), worked('cycle_s', explainRound(compiled, tender)),
    ]))),
    ...compiled.fills.map((fill) => worked('bayRate_gpm', explainBayRate(compiled, fill))),
  ])
}

/** The headline, or the flow with stored water: where the search began, what stopped it. */
export function explainHeldFlow(compiled: CompiledPlan, held: HeldFlow, flow_gpm: number, law: 'sustainable' | 'stored'): Working {
  return working(law, 'flow_gpm', flow_gpm, 'simulation at constant flow, searched downwards', [
    worked('hauledCapacity_gpm', explainHaul(compiled, held.haul)),
    ...compiled.dumps.map((dump) => worked('pump_gpm', explainDumpPump(compiled, dump))),
    ...compiled.lays.map((lay) => worked('layFlow_gpm', explainLay(compiled, lay))),
    computed('bound_gpm', held.bound_gpm),
    ...compiled.dumps.flatMap(({ site, spec }): WorkingInput[] => [
      computed('capacity_gal', spec.capacity_gal),
      ...(compiled.ledger.assumptions.has(`${site.id}/draftLimit_in`) || site.draftLimit_in !== undefined
        ? [given(compiled.ledger, site, 'draftLimit_in', site.draftLimit_in ?? compiled.ledger.assumptions.get(`${site.id}/draftLimit_in`)?.value ?? 0)]
        : []),
    ]),
    given(compiled.ledger, compiled.bundle.plan, 'duration_s', compiled.duration_s),
    computed('resolution_gpm', held.resolution_gpm),
    worked('hand_gpm', explainHandFigure(compiled)),
  ])
}

/** The flow asked for: the officer's, a stage of the plan, or a method's on the building. */
export function explainNeeded({ bundle, demand, ledger }: CompiledPlan): Working | undefined {
  if (demand.needed_gpm === undefined) return undefined
  const hazard = findHazard(bundle, bundle.plan.hazardId)
  const stages = bundle.plan.demand ?? []
  if (stages.length > 0)
    return working('needed-stages', 'flow_gpm', demand.needed_gpm, '', stages.map((stage) => given(ledger, { id: stage.id }, 'flow_gpm', stage.flow_gpm)))
  const methods = hazard && findNeededFlow(hazard)
  if (hazard && demand.needed_gpm === hazard.needed_gpm && (hazard.neededBy === undefined || hazard.neededBy === 'officer'))
    return working('needed-officer', 'flow_gpm', demand.needed_gpm, '', [given(ledger, hazard, 'needed_gpm', demand.needed_gpm), ...methodInputs(methods)])
  return working(`needed-${methods?.chosen ?? 'officer'}`, 'flow_gpm', demand.needed_gpm, 'methods stand side by side; the rural standard is the floor', methodInputs(methods))
}

const methodInputs = (methods: ReturnType<typeof findNeededFlow>): WorkingInput[] =>
  (methods?.methods ?? []).map(({ method, flow_gpm }) => computed(`${method}_gpm`, flow_gpm))

/** Time short, the gap and the tank's end, from the planned run. */
export function explainShortage(run: ShuttleRun, field: 'tankEmpty_s' | 'gap_s' | 'short_s', value: number): Working {
  const inputs = field === 'short_s'
    ? [computed('demanded_gal', run.demanded_gal), computed('delivered_gal', run.delivered_gal)]
    : [computed('firstWater_s', run.firstWater_s ?? 0), ...(field === 'gap_s' ? [computed('tankEmpty_s', run.engineEmpty_s ?? 0), computed('supplyReady_s', run.supplyReady_s ?? 0)] : [])]
  return working(field === 'short_s' ? 'time-short' : field === 'gap_s' ? 'gap' : 'tank-empty', field, value, 'simulation of the planned demand', inputs)
}
