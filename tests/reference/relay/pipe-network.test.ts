import { expect, test } from 'vitest'
import { planRelay, pumperStops, type RelaySpec } from '@/lib/relay'
import { atPond, endless, endlessSource, overRidge, pumperOf } from '../../unit/relay/lays'
import { solveNetwork } from './pipe-network'

/** A general solver of pipe networks (EPANET 2.3 as a library): the friction law made equal, everything else its own. */
const SHARE = 0.01
/** Pressures near nothing are compared to a tenth of a psi. */
const LEAST_PSI = 0.1

function expectNear(ours: number, theirs: number, what: string): void {
  expect(Math.abs(ours - theirs), `${what}: ours ${ours}, theirs ${theirs}`).toBeLessThanOrEqual(Math.max(LEAST_PSI, SHARE * Math.abs(theirs)))
}

const hills = (length_ft: number, heights_ft: readonly number[]) => heights_ft.map((height_ft, i) => ({ distance_ft: (length_ft * i) / (heights_ft.length - 1), height_ft }))

const relays: Readonly<Record<string, RelaySpec>> = {
  'level, one line': { ...overRidge, profile: [], lay: [{ length_ft: 4000, lines: [{ size_in: 4 }] }] },
  'over a ridge': overRidge,
  'over two ridges, unlike pumpers': {
    ...overRidge, pumpers: [pumperOf('a', 750), pumperOf('b', 1500), pumperOf('c', 1000)],
    lay: [{ length_ft: 8000, lines: [{ size_in: 4 }] }], profile: hills(8000, [400, 520, 430, 610, 560]),
  },
  'uphill all the way': { ...overRidge, pumpers: [pumperOf('a'), pumperOf('b'), pumperOf('c')], profile: hills(3000, [100, 250, 420, 540]) },
  'downhill all the way': { ...overRidge, lay: [{ length_ft: 6000, lines: [{ size_in: 3 }] }], profile: hills(6000, [300, 260, 240, 200]) },
  'mixed hose, unlike parallel lines and fittings': {
    ...overRidge, profile: hills(5200, [200, 260, 240, 330, 300]),
    lay: [
      { length_ft: 2000, lines: [{ size_in: 5 }] },
      { length_ft: 1700, lines: [{ size_in: 2.5 }, { size_in: 3 }, { size_in: 3 }], appliances: [{ at_ft: 0, kind: 'fitting' }, { at_ft: 1700, kind: 'fitting' }] },
      { length_ft: 1500, lines: [{ size_in: 4, coefficient: 0.17 }] },
    ],
  },
  'from a hydrant': {
    ...overRidge, source: { id: 'h', kind: 'hydrant', pumper: { rated_gpm: 1250 }, hydrant: { static_psi: 60, residual_psi: 40, flow_gpm: 800 } },
  },
  'hose pressure the limit': { ...overRidge, source: endlessSource, pumpers: [{ id: 'a', pumper: endless }], lay: [{ length_ft: 3000, lines: [{ size_in: 3 }, { size_in: 3 }] }] },
  'only at two places': { ...overRidge, stations_ft: [700, 2100], lay: [{ length_ft: 3000, lines: [{ size_in: 4 }] }] },
  'high lift': { ...overRidge, source: { id: 'pond', kind: 'draft', draft: atPond({ rated_gpm: 1000 }, 18) } },
}

for (const [name, spec] of Object.entries(relays)) {
  test(`flow and every pressure agree within 1 % with the network solver: ${name}`, async () => {
    const result = planRelay(spec)
    expect(result.pumpers.length).toBeGreaterThan(0)
    const network = await solveNetwork(spec, result)
    expectNear(result.flow_gpm, network.flow_gpm, 'flow')
    result.pumpers.forEach(({ id, intake_psi, discharge_psi }, i) => {
      const theirs = network.pumpers[i]
      if (!theirs) throw new Error('no such pumper')
      if (intake_psi !== undefined) expectNear(intake_psi, theirs.intake_psi, `intake of ${id}`)
      expectNear(discharge_psi, theirs.discharge_psi, `discharge of ${id}`)
    })
    expectNear(result.legs.at(-1)?.arrival_psi ?? NaN, network.end_psi, 'end of the lay')
  })
}

test('with one pumper out and its water led round it through one more fitting, they still agree', async () => {
  const spec = { ...overRidge, pumpers: [pumperOf('a'), pumperOf('b'), pumperOf('c')], lay: [{ length_ft: 6000, lines: [{ size_in: 4 }] }], profile: hills(6000, [500, 560, 640, 560]) }
  const result = planRelay(spec)
  const stops = pumperStops(spec, result.placed, result.flow_gpm).slice(1)
  expect(stops.filter(({ flow_gpm }) => flow_gpm > 350).length).toBeGreaterThan(0)
  for (const { id, flow_gpm, result: left } of stops) {
    expect(flow_gpm).toBeLessThan(result.flow_gpm)
    if (flow_gpm === 0) continue
    const at_ft = result.placed.find((one) => one.id === id)?.at_ft ?? NaN
    const network = await solveNetwork({ ...spec, lay: spec.lay.map((segment) => ({ ...segment, appliances: [{ at_ft, kind: 'fitting' as const }] })) }, left)
    expectNear(flow_gpm, network.flow_gpm, `flow without ${id}`)
    left.pumpers.forEach(({ discharge_psi }, i) => { expectNear(discharge_psi, network.pumpers[i]?.discharge_psi ?? NaN, `discharge without ${id}`) })
  }
})
