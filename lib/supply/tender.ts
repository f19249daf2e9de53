import { issue, type Issue } from '../issue'
import type { TenderSpec } from '../shuttle'
import { findTender, type Bundle, type DumpSite, type Tender, type TenderTask } from '../plan'
import { SECONDS_PER_MINUTE } from '../units'
import { arrival } from './arrival'
import { defaults } from './defaults'
import { take, type Ledger } from './ledger'
import { sitesOfTask } from './legs'
import { isWay, type Ways } from './ways'

/** A tender ready to be simulated, or the reason why it stays out. */
export type ResolvedTender = { readonly task: TenderTask; readonly tender: Tender; readonly fillSiteId: string; readonly dumpSiteId: string; readonly spec: TenderSpec }

/**
 * One tender's numbers for the shuttle.
 *
 * @param fillIndex places of the sites in the shuttle's tables
 * @returns the numbers, with issues; no numbers when it has no tank or no way
 */
export function resolveTender(
  bundle: Bundle, ledger: Ledger, ways: Ways, task: TenderTask, fillIndex: ReadonlyMap<string, number>, dumpIndex: ReadonlyMap<string, number>,
): { resolved?: ResolvedTender; issues: Issue[] } {
  const tender = findTender(bundle, task.tenderId)
  const { fillSiteId, dumpSiteId } = sitesOfTask(bundle, task)
  const dumpSite = bundle.plan.dumpSites.find(({ id }) => id === dumpSiteId)
  if (!tender?.tank_gal || !fillSiteId || !dumpSiteId || !dumpSite || !fillIndex.has(fillSiteId)) return { issues: [] }

  const first = arrival(bundle, ledger, ways, tender, dumpSiteId)
  const toFill = ways.find(tender.id, dumpSiteId, fillSiteId)
  const toDump = ways.find(tender.id, fillSiteId, dumpSiteId)
  if ('code' in first || !isWay(toFill) || !isWay(toDump)) {
    const blockedAt = 'code' in first ? dumpSiteId : !isWay(toFill) ? fillSiteId : dumpSiteId
    return { issues: [issue('tender-cannot-reach', 'warn', [tender.id, blockedAt])] }
  }

  const number = (field: string, value: number | undefined, fallback: (typeof defaults)[keyof typeof defaults]) => take(ledger, tender, field, value, fallback)
  const usableShare = number('usableShare', tender.usableShare, defaults.usableShare)
  const usable_gal = number('tank_gal', tender.tank_gal, defaults.usableShare) * usableShare
  return {
    issues: first.issues,
    resolved: {
      task, tender, fillSiteId, dumpSiteId,
      spec: {
        id: tender.id,
        usable_gal,
        arrive_s: first.arrive_s + (task.delay_s ?? 0),
        ...(task.withdraw_s !== undefined && { withdraw_s: task.withdraw_s }),
        dumpIndex: dumpIndex.get(dumpSiteId) ?? 0,
        fillIndex: fillIndex.get(fillSiteId) ?? 0,
        toFill_s: toFill.travel_s,
        toDump_s: toDump.travel_s,
        dumpPosition_s: number('dumpPosition_s', tender.dumpPosition_s, dumpPositionDefault(dumpSite)),
        dumpClear_s: number('dumpClear_s', tender.dumpClear_s, defaults.dumpClear_s),
        dumpRate_gpm: dumpRates_gpm(tender, number),
        fillPosition_s: number('fillPosition_s', tender.fillPosition_s, defaults.fillPosition_s),
        fillClear_s: number('fillClear_s', tender.fillClear_s, defaults.fillClear_s),
        fillLimit_gpm: number('fillLimit_gpm', tender.fillLimit_gpm, defaults.tenderFillLimit_gpm),
        topUpShare: defaults.topUpShare.value,
        topUpRateShare: defaults.topUpRateShare.value,
      },
    },
  }
}

const dumpPositionDefault = ({ manner }: DumpSite) => (manner === 'driveThrough' ? defaults.dumpPositionDriveThrough_s : defaults.dumpPositionBackIn_s)

/**
 * The standard's average holds over the first nine tenths of the tank, which is all that a
 * tender credited with nine tenths gives; one that empties its tank has a slow last part.
 */
function dumpRates_gpm(tender: Tender, number: (field: string, value: number | undefined, fallback: typeof defaults.tenderDump_gpm | typeof defaults.tenderDumpTail_gpm) => number): number[] {
  const main_gpm = number('dump_gpm', tender.dump_gpm, defaults.tenderDump_gpm)
  if ((tender.usableShare ?? defaults.usableShare.value) <= 0.9 && tender.dumpTail_gpm === undefined) return [main_gpm]
  const tail_gpm = number('dumpTail_gpm', tender.dumpTail_gpm, defaults.tenderDumpTail_gpm)
  return [...Array<number>(9).fill(main_gpm), Math.min(main_gpm, tail_gpm)]
}

/** A round with nobody in the way, by its parts. */
export function roundOf(spec: TenderSpec, bayRate_gpm: number): { fill_s: number; dump_s: number; handling_s: number; travel_s: number; cycle_s: number } {
  const rate_gpm = Math.min(bayRate_gpm, spec.fillLimit_gpm)
  const slow = spec.topUpShare / spec.topUpRateShare
  const fill_s = rate_gpm > 0 ? (spec.usable_gal / rate_gpm) * SECONDS_PER_MINUTE * (1 - spec.topUpShare + slow) : 0
  const part_gal = spec.usable_gal / spec.dumpRate_gpm.length
  const dump_s = spec.dumpRate_gpm.reduce((sum, rate) => sum + (part_gal / rate) * SECONDS_PER_MINUTE, 0)
  const handling_s = spec.dumpPosition_s + spec.dumpClear_s + spec.fillPosition_s + spec.fillClear_s
  const travel_s = spec.toFill_s + spec.toDump_s
  return { fill_s, dump_s, handling_s, travel_s, cycle_s: fill_s + dump_s + handling_s + travel_s }
}
