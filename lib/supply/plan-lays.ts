import type { Bundle } from '../plan'
import { resolveLays, type ResolvedLay, type ResolvedLays } from './hose-lay/resolve-lays'
import { startLedger } from './ledger'
import { staffingOf } from './staffing'
import { waysOf } from './ways'

/** Laying waits for the people who lay, as setting up a site does. */
export function staffedLay(lay: ResolvedLay, crewAt_s = 0): ResolvedLay {
  const start_s = Math.max(lay.start_s, crewAt_s)
  return { ...lay, start_s, ready_s: start_s + lay.setUp_s }
}

/** The hose lays that count in a plan that is nothing but its lays, with the people of their own pumpers. */
export function resolvePlanLays(bundle: Bundle): ResolvedLays {
  const ledger = startLedger()
  const ways = waysOf(bundle, ledger)
  const { lays, issues } = resolveLays(bundle, ledger, ways)
  const staffing = staffingOf(bundle, ledger, ways, [], lays)
  return { lays: lays.map((lay) => staffedLay(lay, staffing.lays.get(lay.lay.id))), issues: [...issues, ...staffing.issues.filter(({ code }) => code === 'staff-short-lay')] }
}
