import type { DumpSpec, FillSpec, ShuttleSpec, TenderSpec } from '@/lib/shuttle'

/** A fill site with round numbers; override what the case is about. */
export const fillSite = (change: Partial<FillSpec> = {}): FillSpec => ({
  id: 'fill', ready_s: 0, bayCount: 1, bayRate_gpm: [1000], ...change,
})

export const dumpSite = (change: Partial<DumpSpec> = {}): DumpSpec => ({
  id: 'dump', ready_s: 0, pumpReady_s: 0, positionCount: 1, capacity_gal: 3000,
  draftLimit: [{ flow_gpm: 0, volume_gal: 200 }], reprime_s: 60, booster_gal: 0, demandShare: 1, ...change,
})

/** 1,000 gal aboard: positions in 30 s, dumps in 60 s, clears in 30 s, 300 s each way, bay 30 s, fills in 60 s, out in 30 s: 840 s a round. */
export const tender = (change: Partial<TenderSpec> = {}): TenderSpec => ({
  id: 'T1', usable_gal: 1000, arrive_s: 100, dumpIndex: 0, fillIndex: 0, toFill_s: 300, toDump_s: 300, dumpPosition_s: 30, dumpClear_s: 30,
  dumpRate_gpm: [1000], fillPosition_s: 30, fillClear_s: 30, fillLimit_gpm: 1000, topUpShare: 0, topUpRateShare: 1, ...change,
})

export const layout = (change: Partial<ShuttleSpec> = {}): ShuttleSpec => ({
  seed: 1, horizon_s: 20000, fills: [fillSite()], dumps: [dumpSite()], tenders: [tender()],
  demand: { stages: [{ from_s: 0, flow_gpm: 300 }], reserve_s: 120 }, ...change,
})
