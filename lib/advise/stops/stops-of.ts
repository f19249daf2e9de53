import type { Bundle } from '../../plan'
import { findOwnSupply, pumpCapacity_gpm, type CompiledPlan } from '../../supply'
import type { ShuttleSpec } from '../../shuttle'
import { closedRoads } from './closed-road'
import type { ResolveWays } from '../ways-with-closure'
import { layPumpers, withoutFill } from './lay-pumpers'
import type { Stop } from './stop'
import { tendersKeeping } from './tender-ways'

/** Everything in a plan that can stop: each pumper, at a site or in a hose lay, tender, bay, position and road. */
export function stopsOf(bundle: Bundle, compiled: CompiledPlan, resolve: ResolveWays): Stop[] {
  const { spec } = compiled
  if (!spec) return []
  const pump_gpm = pumpCapacity_gpm(compiled)
  return [
    ...fillPumpers(bundle, compiled, spec, pump_gpm), ...dumpPumpers(bundle, compiled, spec), ...layPumpers(bundle, compiled, spec, pump_gpm), ...tenders(spec, pump_gpm),
    ...places(spec, pump_gpm), ...closedRoads(bundle, spec, pump_gpm, resolve),
  ]
}

function fillPumpers({ plan }: Bundle, { lays }: CompiledPlan, spec: ShuttleSpec, pump_gpm: number): Stop[] {
  return spec.fills.flatMap((fill, index): Stop[] => {
    const site = plan.fillSites.find(({ id }) => id === fill.id)
    // Where a hose lay is the whole supply, its pumpers are looked at.
    if (site && findOwnSupply(lays, site)) return []
    return [{
      id: `fillPumper:${fill.id}`, kind: 'fillPumper', subjectIds: [site?.pumperId ?? fill.id, fill.id], values: {}, isAtOnce: false, pump_gpm,
      ...withoutFill(spec, index, fill),
    }]
  })
}

function dumpPumpers({ plan }: Bundle, { dumps }: CompiledPlan, spec: ShuttleSpec): Stop[] {
  return spec.dumps.map((dump, index): Stop => {
    const restShare = 1 - dump.demandShare
    const left = tendersKeeping(spec.tenders, ({ dumpIndex }) => dumpIndex !== index)
    const shares = spec.dumps.map((one, at) => ({ ...one, demandShare: at === index ? 0 : one.demandShare / restShare }))
    const pumperId = plan.dumpSites.find(({ id }) => id === dump.id)?.pumperId
    return {
      id: `dumpPumper:${dump.id}`, kind: 'dumpPumper', subjectIds: [pumperId ?? dump.id, dump.id], values: {}, isAtOnce: dump.demandShare > 0,
      pump_gpm: dumps.reduce((sum, one, at) => sum + (at === index ? 0 : one.pump_gpm), 0),
      onward: spec,
      after: restShare > 1e-9 && left.length > 0 ? { ...spec, dumps: shares, tenders: left } : undefined,
    }
  })
}

function tenders(spec: ShuttleSpec, pump_gpm: number): Stop[] {
  return spec.tenders.map((tender, index): Stop => {
    const without = { ...spec, tenders: spec.tenders.toSpliced(index, 1) }
    return {
      id: `tender:${tender.id}`, kind: 'tender', subjectIds: [tender.id], values: {}, isAtOnce: false, pump_gpm,
      onward: without, after: without.tenders.length > 0 ? without : undefined,
    }
  })
}

/** One bay or position fewer, where there is more than one; the last one is the pumper's row. */
function places(spec: ShuttleSpec, pump_gpm: number): Stop[] {
  const bays = spec.fills.flatMap((fill, index): Stop[] => {
    if (fill.bayCount < 2) return []
    const changed = { ...spec, fills: spec.fills.with(index, {
      ...fill, bayCount: fill.bayCount - 1, bayRate_gpm: fill.bayRate_gpm.slice(0, -1),
      ...(fill.bayAfter_s && { bayAfter_s: fill.bayAfter_s.slice(0, -1) }),
      ...(fill.flowingBayCount !== undefined && { flowingBayCount: Math.min(fill.flowingBayCount, fill.bayCount - 1) }),
    }) }
    return [{ id: `fillBay:${fill.id}`, kind: 'fillBay', subjectIds: [fill.id], values: { count: fill.bayCount - 1 }, isAtOnce: false, pump_gpm, onward: changed, after: changed }]
  })
  const positions = spec.dumps.flatMap((dump, index): Stop[] => {
    if (dump.positionCount < 2) return []
    const changed = { ...spec, dumps: spec.dumps.with(index, {
      ...dump, positionCount: dump.positionCount - 1, ...(dump.positionAfter_s && { positionAfter_s: dump.positionAfter_s.slice(0, -1) }),
    }) }
    return [{ id: `dumpPosition:${dump.id}`, kind: 'dumpPosition', subjectIds: [dump.id], values: { count: dump.positionCount - 1 }, isAtOnce: false, pump_gpm, onward: changed, after: changed }]
  })
  return [...bays, ...positions]
}
