import { describe, expect, test } from 'vitest'
import { runExponential, type Estimate, type Network } from './exponential-run'
import { networkMeans, productFormThroughput, type Station } from './many-servers'
import { machineRepair, meanValues } from './mean-value'
import published from './closed-queue.json'
import grid from './queue-grid.json'

const stationsOf = ({ fill_min, dump_min, bays, positions }: Network): Station[] => [{ service: fill_min, serverCount: bays }, { service: dump_min, serverCount: positions }]

const networks: Network[] = grid.times_min.flatMap(({ fill_min, dump_min, road_min }) =>
  grid.tenders.flatMap((tenders) => grid.bays.flatMap((bays) => grid.positions.map((positions) => ({ tenders, bays, positions, fill_min, dump_min, road_min })))))

/** How many standard errors a simulated mean lies off the theory; a wait that cannot happen must not. */
function errorsOff({ mean, standardError }: Estimate, theory: number): number {
  if (standardError === 0) return Math.abs(mean - theory) < 1e-9 ? 0 : Infinity
  return Math.abs(mean - theory) / standardError
}

describe('theory with several servers a station', () => {
  test('gives the published figures where every station has one', () => {
    for (const { given, expected } of [published.databaseServer, published.courseNote]) {
      for (const { customers } of expected) {
        const ours = networkMeans(given.demands_s.map((service) => ({ service, serverCount: 1 })), given.delay_s, customers)
        const plain = meanValues(given.demands_s, given.delay_s, customers)
        expect(ours.throughput).toBeCloseTo(plain.throughput, 12)
        ours.queue.forEach((mean, i) => expect(mean).toBeCloseTo(plain.queue[i] ?? NaN, 12))
      }
    }
  })

  test('gives the throughput of the product form on the whole grid', () => {
    for (const network of networks) {
      const stations = stationsOf(network)
      expect(networkMeans(stations, network.road_min, network.tenders).throughput / productFormThroughput(stations, network.road_min, network.tenders)).toBeCloseTo(1, 12)
    }
  })

  test('gives the machine-repair form for one server and a delay', () => {
    for (const customers of grid.machineRepair.customers) for (const share of grid.machineRepair.serviceOverRun) {
      const { p, wq } = machineRepair(customers, 1, 1 / share)
      const ours = networkMeans([{ service: share, serverCount: 1 }], 1, customers)
      expect(ours.throughput).toBeCloseTo((1 - (p[0] ?? 0)) / share, 10)
      if (customers > 1) expect(ours.wait[0]).toBeCloseTo(wq, 10)
    }
  })
})

describe(grid.name, () => {
  test(`${networks.length} layouts with exponential times bring, and wait at bays and positions, what theory says`, () => {
    let outside = 0
    networks.forEach((network, index) => {
      const theory = networkMeans(stationsOf(network), network.road_min, network.tenders)
      const run = runExponential(network, index + 1, grid.roundsPerBatch)
      const pairs: [string, Estimate, number][] = [
        ['haul', run.roundsPerMin, theory.throughput], ['wait for a bay', run.fillWait_min, theory.wait[0] ?? NaN], ['wait for a position', run.dumpWait_min, theory.wait[1] ?? NaN],
      ]
      expect(run.roundsPerMin.standardError, JSON.stringify(network)).toBeLessThan(0.015 * theory.throughput)
      for (const [what, estimate, expected] of pairs) {
        const off = errorsOff(estimate, expected)
        expect(off, `${what} ${JSON.stringify(network)}: ${estimate.mean} against ${expected}`).toBeLessThan(grid.tAll)
        if (off > grid.t99) outside++
      }
    })
    expect(outside).toBeLessThanOrEqual(grid.outsideMost)
  }, 240_000)

  test('one bay and a position for everyone: the bay is the repairer, the rest of the round the run', () => {
    const cases = grid.machineRepair.customers.flatMap((tenders) => grid.machineRepair.serviceOverRun.map((share) => ({ tenders, share })))
    cases.forEach(({ tenders, share }, index) => {
      const run_min = 10
      const fill_min = share * run_min
      const { p, wq } = machineRepair(tenders, 1 / run_min, 1 / fill_min)
      const run = runExponential({ tenders, bays: 1, positions: tenders, fill_min, dump_min: 2, road_min: run_min - 2 }, 1000 + index, grid.roundsPerBatch)
      const label = `${tenders} tenders, service ${share} of the run`
      expect(errorsOff(run.roundsPerMin, (1 - (p[0] ?? 0)) / fill_min), label).toBeLessThan(grid.tAll)
      expect(errorsOff(run.fillWait_min, tenders === 1 ? 0 : wq), label).toBeLessThan(grid.tAll)
    })
  }, 120_000)

  test('the published six machines: the simulated tenders wait as long for their bay as the machines for their repairer', () => {
    const { given, expected } = published.machineRepair
    const { fillWait_min: wait, roundsPerMin } = runExponential(
      { tenders: given.customers, bays: 1, positions: given.customers, fill_min: given.meanRepair_h, dump_min: 1, road_min: given.meanRun_h - 1 }, 7, 20_000)
    // Hours of the book stand for minutes here.
    expect(wait.standardError).toBeLessThan(0.02 * expected.wq_h)
    expect(errorsOff(wait, expected.wq_h)).toBeLessThan(grid.t99)
    expect(errorsOff(roundsPerMin, (1 - expected.p0) / given.meanRepair_h)).toBeLessThan(grid.t99)
    // Little's law, with the wait and the service: customers in the repair shop.
    expect(roundsPerMin.mean * (wait.mean + given.meanRepair_h)).toBeCloseTo(expected.l, 1)
  }, 120_000)
})
