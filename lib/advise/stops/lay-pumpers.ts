import type { Bundle } from '../../plan'
import type { FillSpec, ShuttleSpec } from '../../shuttle'
import { layStops, type CompiledPlan, type ResolvedLay } from '../../supply'
import type { Stop } from './stop'
import { tendersKeeping } from './tender-ways'

/**
 * Each pumper of each hose lay that counts: its water goes round it and the others of the lay carry what they can; without the one at the
 * source, and where none carries on, the lay brings nothing.
 */
export function layPumpers(bundle: Bundle, { lays }: CompiledPlan, spec: ShuttleSpec, pump_gpm: number): Stop[] {
  return lays.flatMap((lay) => layStops(bundle, lay.lay).map(({ id, flow_gpm }): Stop => ({
    id: `layPumper:${lay.lay.id}:${id}`, kind: 'layPumper', subjectIds: [id, lay.lay.id], values: {}, isAtOnce: false, pump_gpm,
    ...without(spec, lay, Math.min(flow_gpm, lay.flow_gpm)),
  })))
}

/** The shuttle with a lay that brings less: as a feed, or as the whole supply of a fill site. */
function without(spec: ShuttleSpec, { lay }: ResolvedLay, flow_gpm: number): Pick<Stop, 'onward' | 'after'> {
  const feed = spec.feeds?.find(({ id }) => id === lay.id)
  if (feed) {
    const feeds = (spec.feeds ?? []).flatMap((one) => (one === feed ? (flow_gpm > 0 ? [{ ...feed, flow_gpm }] : []) : [one]))
    const less = { ...spec, feeds }
    return { onward: less, after: less }
  }
  const index = spec.fills.findIndex(({ id }) => id === lay.toId)
  const fill = spec.fills[index]
  if (!fill) return { onward: spec, after: spec }
  if (flow_gpm > 0) {
    const less = { ...spec, fills: spec.fills.with(index, { ...fill, bayRate_gpm: fill.bayRate_gpm.map((rate_gpm, k) => Math.min(rate_gpm, flow_gpm / (k + 1))) }) }
    return { onward: less, after: less }
  }
  return withoutFill(spec, index, fill)
}

/** The shuttle once a fill site gives nothing. Those who fill only there still bring what they carry; whoever may choose goes elsewhere. */
export function withoutFill(spec: ShuttleSpec, index: number, fill: FillSpec): Pick<Stop, 'onward' | 'after'> {
  const left = tendersKeeping(spec.tenders, ({ fillIndex }) => fillIndex !== index)
  const { inflow_gpm: _inflow, sourceId: _source, ...rest } = fill
  return {
    onward: { ...spec, fills: spec.fills.with(index, { ...rest, usable_gal: 0 }), tenders: spec.tenders.map((tender) => left.find(({ id }) => id === tender.id) ?? tender) },
    after: left.length > 0 ? { ...spec, tenders: left } : undefined,
  }
}
