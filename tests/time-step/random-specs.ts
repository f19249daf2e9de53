import type { ShuttleSpec } from '@/lib/shuttle/spec'

/*
 * The specs both models are run on: a fixed row of pseudo-random numbers (a 32-bit
 * linear congruence with the constants of Numerical Recipes), turned into layouts a
 * rural crew could set up. Same row every time, so that an exception can be looked at.
 */
export function randomSpecs(count: number, loadShare: (chance: number) => number = (chance) => 0.4 + 0.5 * chance, start = 20240229): ShuttleSpec[] {
  let word = start >>> 0
  const next = (): number => { word = (Math.imul(word, 1664525) + 1013904223) >>> 0; return word / 4294967296 }
  const between = (low: number, high: number): number => low + next() * (high - low)
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1))
  const oneSpec = (): ShuttleSpec => {
    const dumpCount = next() < 0.8 ? 1 : 2
    const fillCount = next() < 0.7 ? 1 : 2
    const shareOfFirst = dumpCount === 1 ? 1 : between(0.3, 0.7)
    const limit = between(100, 400)
    const spec: ShuttleSpec = {
      seed: whole(1, 1000),
      horizon_s: 18000,
      fills: Array.from({ length: fillCount }, (_, f) => {
        const bayCount = whole(1, 3)
        const rate = between(400, 1200)
        const hasPond = next() < 0.15
        return {
          id: `fill-${f}`,
          ready_s: between(300, 1200),
          bayCount,
          bayRate_gpm: Array.from({ length: bayCount }, (_, n) => rate / (1 + 0.6 * n)),
          ...(hasPond ? { usable_gal: between(10000, 60000), inflow_gpm: between(0, 300) } : {}),
        }
      }),
      dumps: Array.from({ length: dumpCount }, (_, d) => {
        const ready_s = between(240, 600)
        return {
          id: `dump-${d}`,
          ready_s,
          pumpReady_s: ready_s + between(0, 300),
          positionCount: whole(1, 3),
          capacity_gal: between(1500, 7000),
          draftLimit: [{ flow_gpm: 250, volume_gal: limit }, { flow_gpm: 1000, volume_gal: limit * 2 }],
          reprime_s: between(30, 120),
          booster_gal: next() < 0.5 ? 0 : between(300, 1000),
          demandShare: d === 0 ? shareOfFirst : 1 - shareOfFirst,
        }
      }),
      tenders: Array.from({ length: whole(dumpCount, 9) }, (_, i) => {
        const leg_s = between(120, 700)
        return {
          id: `tender-${i}`,
          usable_gal: between(1000, 3500),
          arrive_s: between(200, 1500),
          ...(next() < 0.05 ? { withdraw_s: between(3000, 6000) } : {}),
          dumpIndex: i < dumpCount ? i : whole(0, dumpCount - 1),
          fillIndex: whole(0, fillCount - 1),
          toFill_s: leg_s,
          toDump_s: leg_s * between(1, 1.3),
          dumpPosition_s: between(15, 75),
          dumpClear_s: between(10, 40),
          dumpRate_gpm: next() < 0.5 ? [between(500, 1800)] : [1600, 1400, 1200, 1000, 800, 600, 450, 300].map((rate) => rate * between(0.9, 1.1)),
          ...(next() < 0.3 ? { spillShare: between(0, 0.1) } : {}),
          fillPosition_s: between(30, 90),
          fillClear_s: between(15, 45),
          fillLimit_gpm: between(500, 1200),
          topUpShare: next() < 0.5 ? 0 : 0.1,
          topUpRateShare: 0.5,
        }
      }),
      demand: {
        stages: [],
        ...(next() < 0.7 ? { firstDue: { arrive_s: between(180, 500), tank_gal: between(500, 1000) } } : {}),
        reserve_s: 120,
      },
    }
    return { ...spec, demand: { ...spec.demand, stages: [{ from_s: 0, flow_gpm: loadShare(next()) * handFigure(spec) }] } }
  }
  return Array.from({ length: count }, oneSpec)
}

/** Handbook estimate: loads over round trips, summed over tenders; waiting is not in it. */
function handFigure(spec: ShuttleSpec): number {
  return spec.tenders.reduce((sum, t) => {
    const dump_min = t.usable_gal / t.dumpRate_gpm[Math.floor(t.dumpRate_gpm.length / 2)]!
    const fill_min = t.usable_gal / Math.min(t.fillLimit_gpm, spec.fills[t.fillIndex]!.bayRate_gpm[0]!)
    const handling_s = t.dumpPosition_s + t.dumpClear_s + t.fillPosition_s + t.fillClear_s
    return sum + (0.9 * t.usable_gal) / (dump_min + fill_min + (handling_s + t.toFill_s + t.toDump_s) / 60)
  }, 0)
}
