import { describe, expect, test } from 'vitest'
import { compileRelay, layFromStock, planRelay, pressurePlot, profileForLay, pumperStops, relayGains, setUpTime, startSteps, stopSteps, type RelaySpec } from '@/lib/relay'
import { endless, endlessSource, overRidge, pumperOf } from './lays'

const level = (length_ft: number, more: Partial<RelaySpec> = {}): RelaySpec => ({ mode: 'closed', source: endlessSource, pumpers: [], lay: [{ length_ft, lines: [{ size_in: 4 }] }], profile: [], ...more })

describe('where pumpers stand', () => {
  test('on level ground alike pumpers stand evenly spaced, each working alike', () => {
    // Two strong pumpers with one pressure limit each: hose of 180 psi, legs of (180 − 20) psi.
    const result = planRelay(level(9000, { pumpers: [{ id: 'a', pumper: endless }, { id: 'b', pumper: endless }] }))
    expect(result.pumpers.map(({ at_ft }) => Math.round(at_ft))).toEqual([0, 3000, 6000])
    expect(result.flow_gpm).toBeCloseTo(100 * Math.sqrt((160 * 100) / (0.2 * 3000)), 2)
    for (const { discharge_psi } of result.pumpers) expect(discharge_psi).toBeCloseTo(180, 3)
  })

  test('a pumper that is not needed stays spare', () => {
    const result = planRelay(level(1000, { pumpers: [pumperOf('a')] }), { wanted_gpm: 400 })
    expect(result.flow_gpm).toBe(400)
    expect(result.pumpers.map(({ id }) => id)).toEqual(['source'])
    expect(result.spareIds).toEqual(['a'])
  })

  test('only at the places allowed', () => {
    const result = planRelay({ ...overRidge, stations_ft: [600, 2500], lay: [{ length_ft: 3000, lines: [{ size_in: 4 }] }] })
    for (const { at_ft } of result.pumpers) expect([0, 600, 2500]).toContain(at_ft)
    expect(result.pumpers.length).toBeGreaterThan(1)
  })

  test('the same pumpers at places of one’s own carry what they can', () => {
    const best = planRelay(level(9000, { pumpers: [{ id: 'a', pumper: endless }] }))
    const own = planRelay(level(9000, { pumpers: [{ id: 'a', pumper: endless }] }), { placed: [{ id: 'source', at_ft: 0 }, { id: 'a', at_ft: 2000 }] })
    expect(own.flow_gpm).toBeLessThan(best.flow_gpm)
    expect(own.flow_gpm).toBeCloseTo(100 * Math.sqrt((160 * 100) / (0.2 * 7000)), 2)
  })

  test('a hill no pump at hand can lift water over carries nothing and says so', () => {
    const hill = [{ distance_ft: 0, height_ft: 0 }, { distance_ft: 500, height_ft: 900 }, { distance_ft: 1000, height_ft: 900 }]
    const result = planRelay(level(1000, { profile: hill }))
    expect(result.flow_gpm).toBe(0)
    expect(result.issues).toMatchObject([{ code: 'relay-no-flow', severity: 'block' }])
  })

  test('a flow that cannot be had is said to be short', () => {
    expect(planRelay(level(3000), { wanted_gpm: 5000 }).issues[0]).toMatchObject({ code: 'relay-below-wanted', values: { wanted_gpm: 5000 } })
  })
})

describe('water standing', () => {
  // 300 ft of fall is 130 psi: closed, the hose at the bottom bears it all when the flow stops.
  const down = [{ distance_ft: 0, height_ft: 300 }, { distance_ft: 3000, height_ft: 0 }]

  test('a closed relay downhill is held to what its lowest hose bears when the flow stops', () => {
    const result = planRelay(level(3000, { profile: down, pumpers: [{ id: 'a', pumper: endless }] }))
    const [source] = result.pumpers
    expect(source?.dischargeLimit_psi).toBeCloseTo(180 - 300 * 0.43313, 1)
    const bottom = pressurePlot(compileRelay(level(3000, { profile: down })), result).at(-1)
    expect(bottom?.stopped_psi).toBeLessThanOrEqual(180 + 1e-6)
  })

  test('an open relay breaks the fall: each leg bears only its own', () => {
    const far = [{ distance_ft: 0, height_ft: 600 }, { distance_ft: 3000, height_ft: 0 }]
    const pumpers = [pumperOf('a', 1500), pumperOf('b', 1500)]
    const closed = planRelay(level(3000, { profile: far, pumpers }))
    expect(closed.flow_gpm).toBe(0)
    // 600 ft stand as 259.9 psi, 180 are borne, 5 must be left at the crest.
    expect(closed.issues.find(({ code }) => code === 'relay-fall-over-hose')?.values['over_psi']).toBeCloseTo(600 * 0.43313 + 5 - 180, 1)
    expect(planRelay(level(3000, { profile: far, pumpers, mode: 'open' })).flow_gpm).toBeGreaterThan(500)
  })

  test('a pumper below a hill has the standing column at its intake with all pumps idle', () => {
    const relay = { ...overRidge, lay: [{ length_ft: 3000, lines: [{ size_in: 4 }] }], stations_ft: [2400] }
    const result = planRelay(relay, { placed: [{ id: 'pond', at_ft: 0 }, { id: 'a', at_ft: 2400 }] })
    const a = result.pumpers[1]
    // 700 ft at the crest, 616 ft at the pumper: 84 ft of water.
    expect(a?.idleIntake_psi).toBeCloseTo(84 * 0.43313, 2)
    expect(a?.stoppedIntake_psi).toBeCloseTo((result.pumpers[0]?.discharge_psi ?? 0) - 116 * 0.43313, 2)
    expect(a?.intakeRelief_psi).toBeCloseTo((a?.stoppedIntake_psi ?? 0) + 10, 6)
  })
})

describe('what else an answer says', () => {
  const result = planRelay(overRidge)

  test('one pumper out: the others from where they stand, the source none', () => {
    const stops = pumperStops(overRidge, result.placed, result.flow_gpm)
    expect(stops.map(({ id }) => id)).toEqual(result.pumpers.map(({ id }) => id))
    expect(stops[0]?.flow_gpm).toBe(0)
    for (const { flow_gpm } of stops.slice(1)) {
      expect(flow_gpm).toBeGreaterThan(0)
      expect(flow_gpm).toBeLessThan(result.flow_gpm)
    }
    expect(pumperStops(overRidge, result.placed, 200).slice(1).every(({ keepsFlow }) => keepsFlow)).toBe(true)
  })

  test('a relay starts from the source and stops from the fire', () => {
    const start = startSteps(result, 'closed'), stop = stopSteps(result, 'closed')
    expect(start.filter(({ code }) => code === 'throttle-up' || code === 'send-water').map(({ pumperId }) => pumperId)).toEqual(['pond', 'a'])
    expect(start.find(({ code }) => code === 'throttle-up')?.psi).toBe(result.pumpers[1]?.discharge_psi)
    expect(stop[0]?.code).toBe('attack-eases')
    expect(stop.filter(({ code }) => code === 'throttle-down').map(({ pumperId }) => pumperId)).toEqual(['a', 'pond'])
    expect(startSteps({ ...result, pumpers: [] }, 'closed')).toEqual([])
  })

  test('what a tenth better gives is never less than now, most first', () => {
    const gains = relayGains({ ...overRidge, stations_ft: [800, 2000] })
    expect(gains.every(({ gain_gpm }) => gain_gpm >= 0)).toBe(true)
    expect(gains.map(({ gain_gpm }) => gain_gpm)).toEqual(gains.map(({ gain_gpm }) => gain_gpm).sort((a, b) => b - a))
    expect(new Set(gains.map(({ link }) => link))).toEqual(new Set(['source', 'pumper', 'hose-friction', 'hose-pressure', 'more-lines', 'places', 'more-pumpers']))
  })

  test('set-up is the slowest of laying, hooking up and the source, then filling and raising the pressure', () => {
    const rates = { bed_ftPerMin: 200, handOne_ftPerMin: 25, hookUp_s: 120, throttle_s: 20, fill_gpm: 500 }
    const time = setUpTime({ lay: [{ length_ft: 2000, lines: [{ size_in: 5 }] }, { length_ft: 500, lines: [{ size_in: 3 }, { size_in: 3 }] }], isByHand: [false, true], crewCount: 5, pumperCount: 3, sourceReady_s: 300, flow_gpm: 800, rates })
    // 2,000 ft at 200 a minute is 10 min; 1,000 ft by two teams of two at 25 each is 10 min.
    expect(time.lay_s).toBeCloseTo(1200, 9)
    // 5 in holds 1.02 gal a foot, 3 in 0.367: 2,040 + 367 gal at 500 gpm.
    expect(time.hose_gal).toBeCloseTo(2000 * 1.01999 + 1000 * 0.36720, 0)
    expect(time.fill_s).toBeCloseTo((time.hose_gal / 500) * 60, 6)
    expect(time.ready_s).toBeCloseTo(1200 + time.fill_s + 60, 6)
  })
})

describe('a lay out of the hose at hand', () => {
  test('one line of the widest hose that reaches, two sections left in the bed', () => {
    const { lay, used } = layFromStock([{ id: 'five', size_in: 5, length_ft: 2200 }], 2000)
    expect(lay).toEqual([{ length_ft: 2000, lines: [{ size_in: 5, coefficient: undefined, working_psi: undefined }] }])
    expect(used).toEqual([{ id: 'five', length_ft: 2000 }])
    expect(layFromStock([{ id: 'five', size_in: 5, length_ft: 2200 }], 2001)).toMatchObject({ lay: [], issues: [{ code: 'relay-hose-short' }] })
  })

  test('smaller hose goes on where the wide ends, in as many lines as there are, with a fitting where lines part', () => {
    const { lay } = layFromStock([{ id: 'three', size_in: 3, length_ft: 2200 }, { id: 'five', size_in: 5, length_ft: 1200 }], 2000)
    expect(lay.map(({ length_ft, lines }) => [length_ft, lines.map(({ size_in }) => size_in)])).toEqual([[1000, [5]], [1000, [3, 3]]])
    expect(lay[1]?.appliances).toEqual([{ at_ft: 0, kind: 'fitting' }])
  })

  test('a short stretch of more lines is not worth its fittings', () => {
    const { lay } = layFromStock([{ id: 'three', size_in: 3, length_ft: 2400 }], 2000)
    expect(lay.map(({ lines }) => lines.length)).toEqual([1])
  })
})

test('ground is spread along hose longer than its way, and shorter hose is told', () => {
  const way = [{ distance_ft: 0, height_ft: 5 }, { distance_ft: 1000, height_ft: 9 }]
  expect(profileForLay(way, 1100, [500])).toEqual({ profile: [{ distance_ft: 0, height_ft: 5 }, { distance_ft: 1100, height_ft: 9 }], places_ft: [550], issues: [] })
  expect(profileForLay(way, 900).issues).toMatchObject([{ code: 'relay-lay-short', values: { short_ft: 100 } }])
})

test('a relay whose parts do not fit together is a broken contract', () => {
  expect(() => planRelay({ ...overRidge, lay: [] })).toThrow(RangeError)
  expect(() => planRelay({ ...overRidge, pumpers: [pumperOf('a'), pumperOf('a')] })).toThrow(RangeError)
  expect(() => planRelay({ ...overRidge, wanted: { residual_psi: -1 } })).toThrow(RangeError)
  expect(() => planRelay({ ...overRidge, profile: [{ distance_ft: 5, height_ft: 0 }, { distance_ft: 5, height_ft: 1 }] })).toThrow(RangeError)
  expect(() => planRelay({ ...overRidge, lay: [{ length_ft: 100, lines: [] }] })).toThrow(RangeError)
})
