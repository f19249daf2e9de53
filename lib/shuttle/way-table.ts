import type { TenderTable, WayTable } from './scenario'
import type { LanePass, TenderSpec, WaySpec } from './spec'

/** The ways a tender may drive: those it chooses from, else the one between its two sites. */
export function waysOfTender(tender: TenderSpec): readonly WaySpec[] {
  if (tender.ways) return tender.ways
  const { dumpIndex, fillIndex, toFill_s, toDump_s, lanesToFill, lanesToDump } = tender
  return [{ dumpIndex, fillIndex, toFill_s, toDump_s, ...(lanesToFill && { lanesToFill }), ...(lanesToDump && { lanesToDump }) }]
}

/** Ways of all tenders end to end, with the one-lane stretches each meets. */
export function wayTablesFor(tenders: readonly TenderSpec[]): Pick<TenderTable, 'wayFrom' | 'wayCount' | 'ways' | 'choosesDump'> {
  const lists = tenders.map(waysOfTender)
  const ways = lists.flat()
  const passes: { lane: number; at_s: number; pass_s: number }[] = []
  const runs = (list: readonly LanePass[] | undefined, whole_s: number): [number, number] => {
    const from = passes.length
    for (const { laneIndex, fromShare, upToShare } of list ?? []) passes.push({ lane: laneIndex, at_s: fromShare * whole_s, pass_s: (upToShare - fromShare) * whole_s })
    return [from, passes.length]
  }
  const toFill = ways.map(({ lanesToFill, toFill_s }) => runs(lanesToFill, toFill_s))
  const toDump = ways.map(({ lanesToDump, toDump_s }) => runs(lanesToDump, toDump_s))
  let way = 0
  const table: WayTable = {
    dump: Int32Array.from(ways, ({ dumpIndex }) => dumpIndex),
    fill: Int32Array.from(ways, ({ fillIndex }) => fillIndex),
    toFill_s: Float64Array.from(ways, ({ toFill_s }) => toFill_s),
    toDump_s: Float64Array.from(ways, ({ toDump_s }) => toDump_s),
    toFillFrom: Int32Array.from(toFill, ([from]) => from),
    toFillUpTo: Int32Array.from(toFill, ([, upTo]) => upTo),
    toDumpFrom: Int32Array.from(toDump, ([from]) => from),
    toDumpUpTo: Int32Array.from(toDump, ([, upTo]) => upTo),
    lane: Int32Array.from(passes, (pass) => pass.lane),
    at_s: Float64Array.from(passes, ({ at_s }) => at_s),
    pass_s: Float64Array.from(passes, ({ pass_s }) => pass_s),
  }
  return {
    wayFrom: Int32Array.from(lists, (list) => { const from = way; way += list.length; return from }),
    wayCount: Int32Array.from(lists, (list) => list.length),
    ways: table,
    choosesDump: lists.some((list) => list.some(({ dumpIndex }) => dumpIndex !== list[0]?.dumpIndex)),
  }
}
