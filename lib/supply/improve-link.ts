import type { DumpSpec, FeedSpec, FillSpec, ShuttleSpec, TenderSpec } from '../shuttle'
import type { LinkKind } from './result'

/** One part of the chain, and the shuttle with that part alone a tenth better. */
export type LinkTrial = { readonly kind: LinkKind; readonly subjectId: string; readonly spec: ShuttleSpec; readonly pumpFactor: number }

const BETTER = 1.1
const SHORTER = 0.9

/**
 * Every part of the chain improved by a tenth, one at a time: its rate, its room, or the time it takes.
 *
 * @param spec the plan as it is
 * @returns one trial a part, in the order of the chain: source, fill, road, dump, pumper, hose lays
 */
export function linkTrials(spec: ShuttleSpec): LinkTrial[] {
  const trials: LinkTrial[] = []
  const add = (kind: LinkKind, subjectId: string, change: Partial<ShuttleSpec>, pumpFactor = 1) => trials.push({ kind, subjectId, spec: { ...spec, ...change }, pumpFactor })
  spec.fills.forEach((fill, index) => {
    const change = (with_: Partial<FillSpec>) => ({ fills: spec.fills.with(index, { ...fill, ...with_ }) })
    const here = (tender: TenderSpec) => tender.fillIndex === index
    if (fill.usable_gal !== undefined && !isBefore(spec, fill, index)) add('source', fill.id, withMoreWater(spec, fill))
    add('fillRate', fill.id, {
      ...change({ bayRate_gpm: fill.bayRate_gpm.map((rate) => rate * BETTER) }),
      tenders: tendersWith(spec, here, ({ fillLimit_gpm }) => ({ fillLimit_gpm: fillLimit_gpm * BETTER })),
    })
    add('fillHandling', fill.id, { tenders: tendersWith(spec, here, ({ fillPosition_s, fillClear_s }) => ({ fillPosition_s: fillPosition_s * SHORTER, fillClear_s: fillClear_s * SHORTER })) })
    add('road', fill.id, { tenders: tendersWith(spec, here, ({ toFill_s, toDump_s, ways }) => ({
      toFill_s: toFill_s * SHORTER, toDump_s: toDump_s * SHORTER,
      ...(ways && { ways: ways.map((way) => ({ ...way, toFill_s: way.toFill_s * SHORTER, toDump_s: way.toDump_s * SHORTER })) }),
    })) })
  })
  spec.dumps.forEach((dump, index) => {
    const change = (with_: Partial<DumpSpec>) => ({ dumps: spec.dumps.with(index, { ...dump, ...with_ }) })
    const here = (tender: TenderSpec) => tender.dumpIndex === index
    add('dumpRate', dump.id, { tenders: tendersWith(spec, here, ({ dumpRate_gpm }) => ({ dumpRate_gpm: dumpRate_gpm.map((rate) => rate * BETTER) })) })
    add('dumpHandling', dump.id, { tenders: tendersWith(spec, here, ({ dumpPosition_s, dumpClear_s }) => ({ dumpPosition_s: dumpPosition_s * SHORTER, dumpClear_s: dumpClear_s * SHORTER })) })
    add('portableTank', dump.id, change({
      capacity_gal: dump.capacity_gal * BETTER,
      ...(dump.front && { front: { capacity_gal: dump.front.capacity_gal * BETTER, transfer_gpm: dump.front.transfer_gpm * BETTER } }),
      ...(dump.intakeLimit_gpm !== undefined && { intakeLimit_gpm: dump.intakeLimit_gpm * BETTER }),
    }))
    add('dumpPump', dump.id, {}, BETTER)
  })
  spec.feeds?.forEach((feed, index) => {
    if (feed.usable_gal !== undefined && !isBefore(spec, feed, spec.fills.length + index)) add('source', feed.id, withMoreWater(spec, feed))
    add('hoseLay', feed.id, { feeds: (spec.feeds ?? []).with(index, { ...feed, flow_gpm: feed.flow_gpm * BETTER }) })
  })
  return trials
}

type Drawing = FillSpec | FeedSpec

const isOneSource = (a: Drawing, b: Drawing): boolean => a === b || (a.sourceId !== undefined && a.sourceId === b.sourceId)

/** Whether one before it draws on the same water, which then stands for it. */
const isBefore = (spec: ShuttleSpec, one: Drawing, index: number): boolean => [...spec.fills, ...(spec.feeds ?? [])].slice(0, index).some((other) => isOneSource(other, one))

/** A tenth more water for all who draw on the same. */
function withMoreWater(spec: ShuttleSpec, one: Drawing): Partial<ShuttleSpec> {
  const more = <T extends Drawing>(other: T): T => (isOneSource(other, one) && other.usable_gal !== undefined
    ? { ...other, usable_gal: other.usable_gal * BETTER, ...(other.inflow_gpm !== undefined && { inflow_gpm: other.inflow_gpm * BETTER }) } : other)
  return { fills: spec.fills.map(more), ...(spec.feeds && { feeds: spec.feeds.map(more) }) }
}

const tendersWith = (spec: ShuttleSpec, which: (tender: TenderSpec) => boolean, change: (tender: TenderSpec) => Partial<TenderSpec>): TenderSpec[] =>
  spec.tenders.map((tender) => (which(tender) ? { ...tender, ...change(tender) } : tender))
