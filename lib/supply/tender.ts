import { findTenderDumpRates_gpm } from '../hydraulics'
import { issue, type Issue } from '../issue'
import type { TenderSpec, WaySpec } from '../shuttle'
import { findTender, type Bundle, type DumpSite, type FillSite, type Plan, type Tender, type TenderTask } from '../plan'
import { arrival } from './arrival'
import { defaults, type Default } from './defaults'
import { take, type Ledger } from './ledger'
import { sitePairs, sitesOfTask } from './legs'
import { linesInto } from './lines-into'
import { laneSharesOf } from './one-lane'
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

  const pairs = sitePairs(bundle, task).flatMap((pair): WaySpec[] => {
    const there = ways.find(tender.id, pair.dumpSiteId, pair.fillSiteId)
    const back = ways.find(tender.id, pair.fillSiteId, pair.dumpSiteId)
    if (!pair.fillSiteId || !pair.dumpSiteId || !isWay(there) || !isWay(back)) return []
    return [{
      dumpIndex: dumpIndex.get(pair.dumpSiteId) ?? 0, fillIndex: fillIndex.get(pair.fillSiteId) ?? 0, toFill_s: there.travel_s, toDump_s: back.travel_s,
      ...laneSharesOf(bundle, ledger, pair.fillSiteId, pair.dumpSiteId, there.travel_s, back.travel_s),
    }]
  })
  const fillSite = bundle.plan.fillSites.find(({ id }) => id === fillSiteId)
  const number = (field: string, value: number | undefined, fallback: Default) => take(ledger, tender, field, value, fallback)
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
        ...laneSharesOf(bundle, ledger, fillSiteId, dumpSiteId, toFill.travel_s, toDump.travel_s),
        ...(pairs.length > 1 && { ways: pairs }),
        ...restOf(bundle.plan, ledger),
        dumpPosition_s: number('dumpPosition_s', tender.dumpPosition_s, dumpPositionDefault(dumpSite)),
        dumpClear_s: number('dumpClear_s', tender.dumpClear_s, defaults.dumpClear_s),
        dumpRate_gpm: dumpRates_gpm(tender, dumpSite, usable_gal, number),
        fillPosition_s: number('fillPosition_s', tender.fillPosition_s, hookUpDefault(fillSite, tender)),
        fillClear_s: number('fillClear_s', tender.fillClear_s, defaults.fillClear_s),
        fillLimit_gpm: number('fillLimit_gpm', tender.fillLimit_gpm, defaults.tenderFillLimit_gpm),
        topUpShare: tender.topUpShare ?? defaults.topUpShare.value,
        topUpRateShare: tender.topUpRateShare ?? defaults.topUpRateShare.value,
      },
    },
  }
}

const dumpPositionDefault = ({ manner }: DumpSite) => (manner === 'driveThrough' ? defaults.dumpPositionDriveThrough_s : defaults.dumpPositionBackIn_s)

/**
 * The standard's average holds over the first nine tenths of the tank, which is all that a
 * tender credited with nine tenths gives; one that empties its tank has a slow last part.
 */
function averageRates_gpm(tender: Tender, main_gpm: number, number: (field: string, value: number | undefined, fallback: Default) => number): number[] {
  if ((tender.usableShare ?? defaults.usableShare.value) <= 0.9 && tender.dumpTail_gpm === undefined) return [main_gpm]
  const tail_gpm = number('dumpTail_gpm', tender.dumpTail_gpm, defaults.tenderDumpTail_gpm)
  return [...Array<number>(9).fill(main_gpm), Math.min(main_gpm, tail_gpm)]
}

/**
 * Dump rates of a tender at a site. Backing in gives by the rear valve, driving through by the side one, each as measured, else as the
 * tender's average. With a known opening the rate falls with the head; a jet or a pump holds it. Vents and baffles cap it.
 */
function dumpRates_gpm(tender: Tender, { manner }: DumpSite, usable_gal: number, number: (field: string, value: number | undefined, fallback: Default) => number): number[] {
  const { dumpBy = 'gravity', dumpOpening_in, dumpCap_gpm, tank_gal = usable_gal } = tender
  const side = manner === 'driveThrough' ? 'dumpSide_gpm' : 'dumpRear_gpm'
  const field = tender[side] ? side : 'dump_gpm'
  const measured_gpm = tender[field] || undefined
  if (dumpBy === 'gravity' && dumpOpening_in !== undefined) {
    const fullHead_ft = number('dumpHead_ft', tender.dumpHead_ft, defaults.dumpHead_ft)
    const expected_gpm = number(field, measured_gpm, defaults.tenderDump_gpm)
    const opening = { way: dumpBy, tank_gal: Math.max(tank_gal, usable_gal), usable_gal, fullHead_ft, opening: { diameter_in: dumpOpening_in }, ...(dumpCap_gpm !== undefined && { cap_gpm: dumpCap_gpm }) }
    const free = findTenderDumpRates_gpm(opening) ?? []
    const most_gpm = free.length / free.reduce((sum, rate) => sum + 1 / rate, 0)
    // The opening's law is an upper bound: unmeasured it gives the way the rate falls, and counts itself only where it is the less.
    const rates = findTenderDumpRates_gpm({ ...opening, average_gpm: measured_gpm === undefined ? Math.min(expected_gpm, most_gpm) : expected_gpm })
    if (rates) return rates
  }
  const usual = dumpBy === 'jet' ? defaults.jetDump_gpm : dumpBy === 'pump' ? { ...defaults.pumpDump_gpm, value: Math.min(tender.pump_gpm || Infinity, defaults.pumpDump_gpm.value) } : defaults.tenderDump_gpm
  const main_gpm = Math.min(number(field, measured_gpm, usual), dumpCap_gpm ?? Infinity)
  return dumpBy === 'gravity' ? averageRates_gpm(tender, main_gpm, number) : [main_gpm]
}

/** More lines take longer to hook up. */
function hookUpDefault(site: FillSite | undefined, tender: Tender): Default {
  const lines = site ? linesInto(site, tender) : 1
  return { ...defaults.fillPosition_s, value: defaults.fillPosition_s.value + (lines - 1) * defaults.hookUpLine_s.value }
}

/** Drivers rest in long runs, or when the plan says so. */
function restOf(plan: Plan, ledger: Ledger): Pick<TenderSpec, 'rest'> {
  const isLong = (plan.duration_s ?? defaults.duration_s.value) >= defaults.restAfter_s.value
  if (plan.restAfter_s === undefined && !isLong) return {}
  const after_s = take(ledger, plan, 'restAfter_s', plan.restAfter_s || undefined, defaults.restAfter_s)
  return { rest: { after_s, break_s: take(ledger, plan, 'rest_s', plan.rest_s, defaults.rest_s) } }
}
