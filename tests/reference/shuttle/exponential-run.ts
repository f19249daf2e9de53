import { advance, begin, compileShuttle, withDemand, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from '../../unit/shuttle/layout'

/** A shuttle as a closed network: serving at both ends is the whole of the time there, tenders all alike. Minutes. */
export type Network = { tenders: number; bays: number; positions: number; fill_min: number; dump_min: number; road_min: number }

const LOAD_GAL = 1800

function specOf({ tenders, bays, positions, fill_min, dump_min, road_min }: Network, seed: number, horizon_s: number): ShuttleSpec {
  return layout({
    seed, horizon_s,
    fills: [fillSite({ bayCount: bays, bayRate_gpm: Array<number>(bays).fill(LOAD_GAL / fill_min) })],
    dumps: [dumpSite({ positionCount: positions })],
    tenders: Array.from({ length: tenders }, (_, i) => tender({
      id: `T${i}`, arrive_s: 0, usable_gal: LOAD_GAL, toFill_s: road_min * 30, toDump_s: road_min * 30,
      dumpPosition_s: 0, dumpClear_s: 0, fillPosition_s: 0, fillClear_s: 0,
      dumpRate_gpm: [LOAD_GAL / dump_min], fillLimit_gpm: 1e9,
    })),
  })
}

export type Estimate = { mean: number; standardError: number }
export type RunFigures = { roundsPerMin: Estimate; fillWait_min: Estimate; dumpWait_min: Estimate }

/** Independent enough: each lasts hundreds of rounds. */
const BATCHES = 30

/** Means over batches of a long run with exponential times, a warm-up of one batch left out, with the standard error of each. */
export function runExponential(network: Network, seed: number, roundsPerBatch: number): RunFigures {
  const { tenders, fill_min, dump_min, road_min } = network
  const batch_s = (roundsPerBatch * (fill_min + dump_min + road_min) * 60) / tenders
  const horizon_s = batch_s * (BATCHES + 1)
  const scenario = withDemand(compileShuttle(specOf(network, seed, horizon_s), { exponential: true }), 'open')
  const state = begin(scenario)
  const read = () => {
    const sum = (list: Iterable<number>) => [...list].reduce((total, value) => total + value, 0)
    return { rounds: sum(state.rounds), filled: sum(state.filled), toFill_s: sum(state.waitedToFill_s), toDump_s: sum(state.waitedToDump_s) }
  }
  advance(scenario, state, batch_s)
  let before = read()
  const batches = Array.from({ length: BATCHES }, (_, k) => {
    advance(scenario, state, batch_s * (k + 2))
    const now = read()
    const rounds = now.rounds - before.rounds
    const figures = [rounds / (batch_s / 60), (now.toFill_s - before.toFill_s) / 60 / (now.filled - before.filled), (now.toDump_s - before.toDump_s) / 60 / rounds]
    before = now
    return figures
  })
  const estimate = (at: number): Estimate => {
    const values = batches.map((figures) => figures[at] ?? 0)
    const mean = values.reduce((sum, value) => sum + value, 0) / BATCHES
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (BATCHES - 1)
    return { mean, standardError: Math.sqrt(variance / BATCHES) }
  }
  return { roundsPerMin: estimate(0), fillWait_min: estimate(1), dumpWait_min: estimate(2) }
}
