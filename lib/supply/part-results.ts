import type { TenderTask } from '../plan'
import { roundOf, type ShuttleRun } from '../shuttle'
import { SECONDS_PER_MINUTE } from '../units'
import type { ResolvedDumpSite } from './dump-site'
import type { ResolvedFillSite } from './fill-site'
import type { DumpSiteResult, FillSiteResult, TenderResult } from './result'
import type { ResolvedTender } from './tender'

const mean = (shares: readonly number[] | undefined): number | null =>
  shares && shares.length > 0 ? shares.reduce((sum, share) => sum + share, 0) / shares.length : null

/** A fill site's part of the result. */
export function fillSiteResult({ site, lift, draft, draftLimit, limit, bayRate_gpm, ready_s }: ResolvedFillSite, run: ShuttleRun | undefined, bayOrders: FillSiteResult['bayOrders']): FillSiteResult {
  const ran = run?.fills.find(({ id }) => id === site.id)
  return {
    kind: 'fillSite', id: site.id, draftLimit, ready_s,
    lift_ft: lift?.lift_ft ?? null,
    seasonDrop_ft: lift?.drop_ft ?? null,
    liftFrom: lift ? (lift.isGuess ? 'assumed' : lift.from) : null,
    draft_gpm: draft?.flow_gpm ?? null,
    gaugeLow_inHg: draft?.vacuumLow_inHg ?? null,
    gaugeHigh_inHg: draft?.vacuumHigh_inHg ?? null,
    margin_ft: draft?.margin_ft ?? null,
    bayRate_gpm: [...bayRate_gpm],
    fillLimit: limit,
    busyShare: mean(ran?.bayBusyShare),
    waiting_s: run ? waiting_s(run, (tender) => tender.waitedToFill_s) : null,
    bayOrders,
  }
}

/** A dump site's part of the result. */
export function dumpSiteResult({ site, spec, pump_gpm }: ResolvedDumpSite, needed_gpm: number | undefined, run: ShuttleRun | undefined): DumpSiteResult {
  const ran = run?.dumps.find(({ id }) => id === site.id)
  return {
    kind: 'dumpSite', id: site.id, pump_gpm,
    capacity_gal: spec.capacity_gal + (spec.front?.capacity_gal ?? 0),
    draftLimit_gal: needed_gpm === undefined ? null : limitAt(spec.draftLimit, needed_gpm * spec.demandShare),
    ready_s: spec.ready_s,
    pumpReady_s: spec.pumpReady_s,
    busyShare: mean(ran?.positionBusyShare),
    waiting_s: run ? waiting_s(run, (tender) => tender.waitedToDump_s) : null,
  }
}

const waiting_s = (run: ShuttleRun, of: (tender: ShuttleRun['tenders'][number]) => number): number => run.tenders.reduce((sum, tender) => sum + of(tender), 0)

/** Linear between the tabled flows, held at the ends. */
function limitAt(table: readonly { flow_gpm: number; volume_gal: number }[], flow_gpm: number): number {
  const upper = table.findIndex((row) => row.flow_gpm >= flow_gpm)
  const high = table[upper < 0 ? table.length - 1 : upper]
  const low = upper > 0 ? table[upper - 1] : undefined
  if (!high) return 0
  if (!low || upper < 0) return high.volume_gal
  return low.volume_gal + ((high.volume_gal - low.volume_gal) * (flow_gpm - low.flow_gpm)) / (high.flow_gpm - low.flow_gpm)
}

/** A tender's part of the result. */
export function tenderResult({ tender, spec, fillSiteId, dumpSiteId }: ResolvedTender, fills: readonly ResolvedFillSite[], run: ShuttleRun | undefined): TenderResult {
  const rate_gpm = fills.find(({ site }) => site.id === fillSiteId)?.bayRate_gpm[0] ?? 0
  const { fill_s, dump_s, handling_s, cycle_s } = roundOf(spec, rate_gpm)
  const ran = run?.tenders.find(({ id }) => id === tender.id)
  return {
    id: tender.id, fillSiteId, dumpSiteId, fill_s, dump_s, handling_s, cycle_s,
    usable_gal: spec.usable_gal,
    arrive_s: spec.arrive_s ?? null,
    toFill_s: spec.toFill_s,
    toDump_s: spec.toDump_s,
    hand_gpm: cycle_s > 0 ? spec.usable_gal / (cycle_s / SECONDS_PER_MINUTE) : null,
    rounds: ran?.roundCount ?? null,
    waitingShare: ran ? 1 - ran.busyShare : null,
  }
}

/** A tender that could not be put to work. */
export function tenderOut({ tenderId }: TenderTask): TenderResult {
  return {
    id: tenderId, fillSiteId: null, dumpSiteId: null, usable_gal: null, arrive_s: null, toFill_s: null, toDump_s: null,
    fill_s: null, dump_s: null, handling_s: null, cycle_s: null, hand_gpm: null, rounds: null, waitingShare: null,
  }
}
