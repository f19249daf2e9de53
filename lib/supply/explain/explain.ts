import type { Bundle } from '../../plan'
import { compileShuttle, flowUsingStored, hauledCapacity, runShuttle, sustainableFlow } from '../../shuttle'
import { compilePlan, type CompiledPlan } from '../compile-plan'
import { gapBeforeSupply_s } from '../gap-before-supply'
import { pumpCapacity_gpm } from '../pump-capacity'
import type { Working } from '../working'
import { isWay } from '../ways'
import { explainHaul, explainHeldFlow, explainNeeded, explainShortage } from './explain-flow'
import { explainBayRate, explainDraft, explainDumpPump } from './explain-site'
import { explainLay } from './explain-lay'
import { explainHandFigure, explainRound, explainTenderHand } from './explain-tender'
import { explainArrival, explainFirstWater, explainSupplyReady } from './explain-time'
import { explainWay } from './explain-way'

/** Figures of the whole answer that have a working. */
export const explainedFigures = [
  'sustainable_gpm', 'stored_gpm', 'hauledCapacity_gpm', 'hand_gpm', 'needed_gpm', 'firstArrival_s', 'firstWater_s', 'tankEmpty_s', 'supplyReady_s', 'gap_s', 'short_s',
] as const

/**
 * How one figure of the answer came about, worked out anew.
 *
 * @param figure a field of the result (`sustainable_gpm`), or `site/<id>/draft_gpm`, `site/<id>/bayRate_gpm`,
 *               `site/<id>/pump_gpm`, `tender/<id>/cycle_s`, `tender/<id>/hand_gpm`, `tender/<id>/arrive_s`,
 *               `lay/<id>/flow_gpm`, `leg/<apparatus>/<from>/<to>`
 * @returns the working, or undefined where the figure has no value
 * @throws RangeError for a figure that is none of these
 */
export function explain(bundle: Bundle, figure: string): Working | undefined {
  const compiled = compilePlan(bundle)
  const [kind, id, field, to] = figure.split('/')
  switch (kind) {
    case 'site': return explainSite(compiled, id ?? '', field ?? '')
    case 'tender': return explainTender(compiled, id ?? '', field ?? '')
    case 'lay': {
      const found = compiled.lays.find(({ lay }) => lay.id === id)
      return found && explainLay(compiled, found)
    }
    case 'leg': {
      const row = compiled.ways.rows.find(({ use }) => use.apparatusId === id && use.fromId === field && use.toId === to)
      return row && isWay(row.way) ? explainWay(compiled, row.use, row.way) : undefined
    }
  }
  if (!(explainedFigures as readonly string[]).includes(figure)) throw new RangeError(`figure is ${figure}, must be one of the explained figures`)
  if (figure === 'needed_gpm') return explainNeeded(compiled)
  if (figure === 'firstArrival_s') return explainArrival(compiled, bundle.plan.firstDueId, 'fireGround')
  return compiled.spec && explainRun(compiled, figure)
}

function explainRun(compiled: CompiledPlan, figure: string): Working | undefined {
  if (!compiled.spec) return undefined
  if (figure === 'hand_gpm') return explainHandFigure(compiled)
  const scenario = compileShuttle(compiled.spec)
  const pump_gpm = pumpCapacity_gpm(compiled)
  if (figure === 'hauledCapacity_gpm') return explainHaul(compiled, hauledCapacity(scenario))
  if (figure === 'sustainable_gpm' || figure === 'stored_gpm') {
    const isStored = figure === 'stored_gpm'
    const held = isStored ? flowUsingStored(scenario, compiled.duration_s) : sustainableFlow(scenario)
    return explainHeldFlow(compiled, held, Math.min(held.flow_gpm, pump_gpm), isStored ? 'stored' : 'sustainable')
  }
  const run = runShuttle(scenario)
  if (figure === 'firstWater_s') return run.firstWater_s === undefined ? undefined : explainFirstWater(compiled, run.firstWater_s)
  if (figure === 'supplyReady_s') return run.supplyReady_s === undefined ? undefined : explainSupplyReady(compiled, run.supplyReady_s)
  if (figure === 'tankEmpty_s') return run.engineEmpty_s === undefined ? undefined : explainShortage(run, 'tankEmpty_s', run.engineEmpty_s)
  if (figure === 'gap_s') {
    const gap_s = gapBeforeSupply_s(compiled.spec, run)
    return gap_s === undefined ? undefined : explainShortage(run, 'gap_s', gap_s)
  }
  return compiled.demand.stages.length > 0 ? explainShortage(run, 'short_s', run.shortSinceArrival_s) : undefined
}

function explainSite(compiled: CompiledPlan, id: string, field: string): Working | undefined {
  const fill = compiled.fills.find(({ site }) => site.id === id)
  if (fill) return field === 'draft_gpm' ? explainDraft(compiled, fill) : explainBayRate(compiled, fill)
  const dump = compiled.dumps.find(({ site }) => site.id === id)
  return dump && explainDumpPump(compiled, dump)
}

function explainTender(compiled: CompiledPlan, id: string, field: string): Working | undefined {
  const tender = compiled.tenders.find((resolved) => resolved.tender.id === id)
  if (!tender) return undefined
  if (field === 'arrive_s') return explainArrival(compiled, id, tender.dumpSiteId)
  return field === 'hand_gpm' ? explainTenderHand(compiled, tender) : explainRound(compiled, tender)
}
