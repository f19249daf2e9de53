import type { RunOptions, ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from '../../unit/shuttle/layout'

/** Scenes from simple to hard; the log of each is kept beside them. */
export const scenes: { name: string; spec: ShuttleSpec; options: RunOptions }[] = [
  {
    name: '01-one-tender-and-the-first-engine',
    spec: layout({ demand: { stages: [{ from_s: 60, flow_gpm: 60 }], firstDue: { arrive_s: 60, tank_gal: 50 }, reserve_s: 120 } }),
    options: { afterReady_s: 1800 },
  },
  {
    name: '02-two-tenders-wait-for-one-position-and-a-full-tank',
    spec: layout({
      dumps: [dumpSite({ capacity_gal: 1500, ready_s: 240, pumpReady_s: 480 })],
      tenders: [tender({ arrive_s: 180 }), tender({ id: 'T2', arrive_s: 200, dumpRate_gpm: [1200, 1000, 600] })],
      demand: { stages: [{ from_s: 0, flow_gpm: 100 }], reserve_s: 120 },
    }),
    options: { afterReady_s: 1500 },
  },
  {
    name: '03-the-draft-is-lost-and-found-again',
    spec: layout({
      dumps: [dumpSite({ booster_gal: 300, reprime_s: 90 })],
      demand: { stages: [{ from_s: 0, flow_gpm: 100 }, { from_s: 600, flow_gpm: 250 }], reserve_s: 120 },
    }),
    options: { afterReady_s: 3000 },
  },
  {
    name: '04-bays-share-a-pump-and-the-pond-runs-dry',
    spec: layout({
      fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 600], usable_gal: 2000, inflow_gpm: 100 })],
      dumps: [dumpSite({ positionCount: 2 })],
      tenders: [0, 20, 40].map((late_s, i) => tender({ id: `T${i + 1}`, arrive_s: 100 + late_s, topUpShare: 0.1, topUpRateShare: 0.5 })),
      demand: { stages: [{ from_s: 0, flow_gpm: 150 }], reserve_s: 120 },
    }),
    options: { demand: 'open', afterReady_s: 2400 },
  },
  {
    name: '05-two-dump-sites-two-fill-sites-one-tender-leaves',
    spec: layout({
      fills: [fillSite({ id: 'pond' }), fillSite({ id: 'stream', ready_s: 700, bayRate_gpm: [500] })],
      dumps: [dumpSite({ id: 'north', demandShare: 0.6 }), dumpSite({ id: 'south', demandShare: 0.4, pumpReady_s: 400 })],
      tenders: [
        tender(), tender({ id: 'T2', arrive_s: 160, dumpIndex: 1, fillIndex: 1 }), tender({ id: 'T3', arrive_s: 220, fillIndex: 1, withdraw_s: 900 }),
      ],
      demand: { stages: [{ from_s: 0, flow_gpm: 100 }], firstDue: { arrive_s: 50, tank_gal: 750 }, reserve_s: 120 },
    }),
    options: { afterReady_s: 1500 },
  },
]
