import { describe, expect, test } from 'vitest'
import { layGround, answerLay, wayDistances_ft } from '@/lib/supply'
import type { ProfilePoint } from '@/lib/terrain'
import { smallBundle } from '../../../fixtures/bundle'

const FROM = { lat: 45.02, lon: -40 }
/** One foot of latitude on the sphere of lib/geo. */
const DEGREES_PER_FT = 180 / Math.PI / 6_371_008.8 * 0.3048
const to = (feet: number) => ({ lat: FROM.lat - feet * DEGREES_PER_FT, lon: FROM.lon })

const lay = (changes: object = {}, way_ft = 2000) => ({
  id: 'lay1', name: 'Pond to barn', fromId: 'ds1', toId: 'fireGround', points: [FROM, to(way_ft)], pumperIds: ['p1'],
  stretches: [{ id: 's1', size_in: 5, length_ft: way_ft }], ...changes,
})
const docs = (one: object, changes: Readonly<Record<string, unknown>> = {}) => {
  const bundle = smallBundle({ 'plan.fillSites.0.pumperId': undefined, 'plan.dumpSites.0.pumperId': undefined, 'plan.hoseLays': [one], ...changes })
  return { bundle, one: bundle.plan.hoseLays![0]! }
}
const answerOf = (one: object, changes: Readonly<Record<string, unknown>> = {}, heights?: ProfilePoint[]) => {
  const { bundle, one: read } = docs(one, changes)
  return answerLay(bundle, read, heights && { points: heights })
}
const codesOf = ({ issues }: { issues: readonly { code: string }[] }) => issues.map(({ code }) => code)
const slope = (way_ft: number, rise_ft: number, doubt_ft = 0, hump_ft = 0): ProfilePoint[] => [0, 0.5, 1].map((share) => ({
  distance_ft: way_ft * share, point: to(way_ft * share), height_ft: 100 + rise_ft * share + (share === 0.5 ? hump_ft : 0), doubt_ft,
}))

describe('what a lay carries', () => {
  test('700 gpm through 1,000 ft of 5 in hose on level ground loses 39.2 psi', () => {
    const { legs, pumpers, flow_gpm } = answerOf(lay({ wanted_gpm: 700, rise_ft: 0 }, 1000))
    expect(flow_gpm).toBeCloseTo(700, 6)
    // FL = C (Q/100)² L/100, handbook coefficient table, row 5 in, C = 0.08 (seen): 0.08 · 49 · 10 = 39.2 psi.
    expect(legs[0]!.friction_psi).toBeCloseTo(39.2, 6)
    expect(pumpers[0]!.discharge_psi).toBeCloseTo(39.2 + 20, 3)
  })

  test('height costs 0.433 psi a foot, entered or read from elevation', () => {
    // Trade figure: 0.434 psi a foot (design figure); 62.4 lb a cubic foot / 144 = 0.433.
    const level = answerOf(lay({ wanted_gpm: 500, rise_ft: 0 })).pumpers[0]!.discharge_psi
    const entered = answerOf(lay({ wanted_gpm: 500, rise_ft: 50 })).pumpers[0]!.discharge_psi
    const read = answerOf(lay({ wanted_gpm: 500 }), {}, slope(2000, 50)).pumpers[0]!.discharge_psi
    expect(entered - level).toBeCloseTo(50 * 0.433, 0)
    expect(read).toBeCloseTo(entered, 6)
  })

  test('the pumper’s draft at the pond is part of it: more lift, less flow', () => {
    const low = answerOf(lay({ rise_ft: 0, lift_ft: 5 }, 300)).most_gpm!
    const high = answerOf(lay({ rise_ft: 0, lift_ft: 22 }, 300)).most_gpm!
    expect(high).toBeLessThan(low)
  })

  test('a second pumper carries more over a long lay, stands within it, and keeps 20 psi at its intake', () => {
    const alone = answerOf(lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 4 }] }, 4000))
    const two = answerOf(lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 4 }], pumperIds: ['p1', 'p2'] }, 4000))
    expect(two.most_gpm!).toBeGreaterThan(alone.most_gpm!)
    expect(two.pumpers).toHaveLength(2)
    const [, second] = two.pumpers
    expect(second!.at_ft).toBeGreaterThan(0)
    expect(second!.at_ft).toBeLessThan(two.hose_ft!)
    expect(second!.intake_psi!).toBeGreaterThanOrEqual(20 - 1e-3)
    for (const { discharge_psi, dischargeLimit_psi, capacityShare } of two.pumpers) {
      expect(discharge_psi).toBeLessThanOrEqual(dischargeLimit_psi + 1e-3)
      expect(capacityShare).toBeLessThanOrEqual(1 + 1e-6)
    }
    expect(two.stops.map(({ id, keepsFlow }) => [id, keepsFlow])).toEqual([['p1', false], ['p2', false]])
    expect(two.stops[0]).toMatchObject({ flow_gpm: 0, pumpers: [] })
    // Without the second the first alone carries the whole lay, at the most its hose or its pump gives.
    const [left] = two.stops[1]!.pumpers
    expect(left!.id).toBe('p1')
    expect(left!.discharge_psi).toBeGreaterThan(100)
    expect(left!.discharge_psi).toBeLessThanOrEqual(left!.dischargeLimit_psi + 1e-3)
    expect(two.stops[1]!.flow_gpm).toBeGreaterThan(0)
    expect(two.start[0]!.code).toBe('lay-hose')
    expect(two.stop[0]!.code).toBe('attack-eases')
  })

  test('pumpers that stand only at the points stand at the points', () => {
    const middle = { points: [FROM, to(1000), to(4000)], standsAtPoints: true, pumperIds: ['p1', 'p2'], rise_ft: 0, stretches: [{ id: 's1', size_in: 4 }] }
    const { pumpers, hose_ft } = answerOf(lay(middle, 4000))
    expect(pumpers.map(({ at_ft }) => at_ft)).toEqual([0, expect.closeTo(hose_ft! / 4, 3)])
  })

  test('no more than the flow wanted is asked, and less is said', () => {
    expect(answerOf(lay({ wanted_gpm: 200, rise_ft: 0 })).flow_gpm).toBeCloseTo(200, 6)
    expect(codesOf(answerOf(lay({ wanted_gpm: 5000, rise_ft: 0 })))).toContain('relay-below-wanted')
  })
})

describe('hose', () => {
  const hose = (more: object) => [{ id: 'e1', name: 'Portable tank', kind: 'portableTank', capacity_gal: 3000 }, { id: 'h5', name: 'LDH', kind: 'hose', size_in: 5, length_ft: 1500, ...more }]

  test('friction and working pressure are those of the district’s own hose, else of the catalogue', () => {
    const stretchOf = (changes: Readonly<Record<string, unknown>>) => answerOf(lay({ rise_ft: 0 }), changes).stretches[0]!
    expect(stretchOf({})).toMatchObject({ coefficient: 0.08, coefficientFrom: 'catalogue', workingFrom: 'default', working_psi: 180 })
    expect(stretchOf({ 'district.equipment': hose({ coefficient: 0.06, working_psi: 200 }) })).toMatchObject({ coefficient: 0.06, coefficientFrom: 'stock', working_psi: 200, workingFrom: 'stock' })
  })

  test('what is entered for a stretch goes before the stock', () => {
    const own = lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 5, coefficient: 0.1 }] })
    expect(answerOf(own, { 'district.equipment': hose({ coefficient: 0.06 }) }).stretches[0]).toMatchObject({ coefficient: 0.1, coefficientFrom: 'entered' })
  })

  test('a stretch without a length takes what the others leave of the way and its bends', () => {
    const { stretches, hose_ft } = answerOf(lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 5, length_ft: 500 }, { id: 's2', size_in: 3, lineCount: 2 }] }))
    expect(hose_ft).toBeCloseTo(2000 * 1.05, 1)
    expect(stretches[1]!.length_ft).toBeCloseTo(1600, 1)
  })

  test('hose is counted by size and line against the pumpers’ and the district’s, each piece once', () => {
    const equipment = hose({ carriedBy: 'p1' })
    const two = lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 5, lineCount: 2, length_ft: 1000 }] }, 1000)
    const changes = { 'district.equipment': equipment, 'district.apparatus.0.supplyHose_in': 5, 'district.apparatus.0.supplyHose_ft': 1500, 'district.apparatus.1.supplyHose_in': 5, 'district.apparatus.1.supplyHose_ft': 700 }
    const answer = answerOf(two, changes)
    expect(answer.hose).toEqual([{ size_in: 5, needed_ft: 2000, carried_ft: 1500, district_ft: 2200, taken_ft: 0 }])
    expect(codesOf(answer)).toContain('lay-hose-beyond-pumpers')
    expect(codesOf(answerOf({ ...two, stretches: [{ id: 's1', size_in: 5, lineCount: 3, length_ft: 1000 }] }, changes))).toContain('lay-hose-beyond-district')
  })

  test('hose shorter than its way is said', () => {
    expect(codesOf(answerOf(lay({ rise_ft: 0, stretches: [{ id: 's1', size_in: 5, length_ft: 1500 }] })))).toContain('relay-lay-short')
  })

  test('an appliance costs 10 psi from 350 gpm; one beyond the hose is left out and said', () => {
    const at = (at_ft: number) => answerOf(lay({ rise_ft: 0, wanted_gpm: 500, appliances: [{ id: 'a1', kind: 'fitting', at_ft }] }))
    // Driver/operator handbook study cards (seen-2nd): 10 psi from 350 gpm.
    expect(at(500).legs[0]!.friction_psi - answerOf(lay({ rise_ft: 0, wanted_gpm: 500 })).legs[0]!.friction_psi).toBeCloseTo(10, 6)
    expect(codesOf(at(9000))).toContain('lay-appliance-off')
  })
})

describe('heights', () => {
  const groundOf = (one: object, heights?: ProfilePoint[]) => layGround(docs(one).one, heights)

  test('a measured rise wins over elevation and keeps its shape', () => {
    const measured = lay({ rise_ft: 80, evidence: { rise_ft: { mark: 'measured' } } })
    const ground = groundOf(measured, slope(2000, 50, 10, 30))
    expect(ground).toMatchObject({ heights: 'terrain-measured', rise_ft: 80 })
    expect(ground.profile.map(({ height_ft }) => height_ft)).toEqual([100, 100 + 25 + 30 + 15, 180])
  })

  test('an unmeasured rise gives way to elevation, and that is said', () => {
    const ground = groundOf(lay({ rise_ft: 80 }), slope(2000, 50, 10))
    expect(ground).toMatchObject({ heights: 'terrain', rise_ft: 50 })
    expect(ground.doubt_ft).toBeCloseTo(Math.hypot(10, 10), 9)
    expect(codesOf(ground)).toContain('lay-rise-unused')
  })

  test('without elevation and rise the ground counts as level, and that is said', () => {
    expect(groundOf(lay())).toMatchObject({ heights: 'none', rise_ft: 0 })
    expect(codesOf(groundOf(lay()))).toContain('lay-heights-none')
  })

  test('elevation with no height at all along the way is none', () => {
    const bare = slope(2000, 0).map(({ distance_ft, point }) => ({ distance_ft, point }))
    expect(codesOf(groundOf(lay(), bare))).toContain('lay-heights-none')
  })

  test('doubt of the heights lowers what is promised', () => {
    const { doubted, most_gpm } = answerOf(lay(), {}, slope(2000, 50, 30))
    expect(doubted!.more_ft).toBeCloseTo(Math.hypot(30, 30), 9)
    expect(doubted!.most_gpm).toBeLessThan(most_gpm!)
  })

  test('a way is as long as its legs together', () => {
    expect(wayDistances_ft([FROM, to(300), to(1000)]).map(Math.round)).toEqual([0, 300, 1000])
  })
})

describe('what stands in the way', () => {
  test.each([
    ['lay-without-pumper', lay({ pumperIds: [] }), {}],
    ['lay-pump-cannot', lay({ pumperIds: ['t1'] }), {}],
    ['lay-pumper-twice', lay({ pumperIds: ['p1', 'p1'] }), {}],
    ['pumper-without-rating', lay(), { 'district.apparatus.0.rated_gpm': undefined }],
    ['lay-way-short', lay({ points: [FROM, FROM] }), {}],
    ['lay-hydrant-untested', lay({ fromId: 'so1' }), { 'district.sources.0.kind': 'pressureHydrant' }],
  ])('%s blocks, and no flow is given', (code, one, changes) => {
    const answer = answerOf(one, changes)
    expect(answer.issues.find((found) => found.code === code)?.severity).toBe('block')
    expect(answer.flow_gpm).toBeUndefined()
  })

  test('a pumper that the plan has elsewhere is said', () => {
    const answer = answerOf(lay({ rise_ft: 0 }), { 'plan.fillSites.0.pumperId': 'p1' })
    expect(answer.issues.find(({ code }) => code === 'lay-pumper-elsewhere')?.subjectIds).toEqual(['p1', 'f1'])
  })

  test('no pumper is run higher than its document says: by hand from FL = C Q² L', () => {
    // 50 psi less 20 left at the end, C = 0.08 (handbook, seen), 2,000 ft: Q = 100 √(30 / (0.08 · 20)) = 433 gpm.
    const held = answerOf(lay({ rise_ft: 0 }), { 'district.apparatus.0.discharge_psi': 50 })
    expect(held.most_gpm!).toBeCloseTo(100 * Math.sqrt(30 / (0.08 * 20)), 0)
    expect(held.pumpers[0]!.discharge_psi).toBeLessThanOrEqual(50 + 1e-3)
  })

  test.each(['closed', 'open'])('nor one in the line of a %s relay', (mode) => {
    const one = lay({ mode, rise_ft: 0, stretches: [{ id: 's1', size_in: 4 }], pumperIds: ['p1', 'p2'] }, 4000)
    const held = answerOf(one, { 'district.apparatus.1.discharge_psi': 90 })
    expect(held.pumpers).toHaveLength(2)
    expect(held.pumpers[1]!.discharge_psi).toBeLessThanOrEqual(90 + 1e-3)
    expect(held.most_gpm!).toBeLessThan(answerOf(one).most_gpm!)
  })

  test('an end that lies far from its place is said, by how far', () => {
    // FROM is the draft site; the barn stands at 45, −40.05.
    const issues = answerOf(lay({ rise_ft: 0 })).issues.filter(({ code }) => code === 'lay-end-off')
    expect(issues.map(({ subjectIds }) => subjectIds[1])).toEqual(['fireGround'])
    const near = answerOf(lay({ rise_ft: 0, points: [FROM, { lat: 45, lon: -40.05 }] }))
    expect(codesOf(near)).not.toContain('lay-end-off')
  })

  test('road crossings take time to set up: 3 min a hose bridge, 1 min a pair of ramps, none where the road is closed', () => {
    // Common practice, no source.
    const crossings = [{ id: 'c1', at_ft: 100 }, { id: 'c2', at_ft: 500, protection: 'bridge' }, { id: 'c3', at_ft: 900, protection: 'ramp' }, { id: 'c4', at_ft: 1500, protection: 'closed' }]
    expect(answerOf(lay({ rise_ft: 0, crossings })).time!.lay_s - answerOf(lay({ rise_ft: 0 })).time!.lay_s).toBe(2 * 180 + 60)
  })

  test('a hydrant’s own pressure is counted', () => {
    const hydrant = { 'district.sources.0.kind': 'pressureHydrant', 'district.sources.0.static_psi': 70, 'district.sources.0.residual_psi': 50, 'district.sources.0.test_gpm': 900 }
    const answer = answerOf(lay({ fromId: 'so1', rise_ft: 0, wanted_gpm: 500 }), hydrant)
    // NFPA 291 (memory): 500 gpm leaves 70 − 20 · (500/900)^(1/0.54) = 63.3 psi in the main.
    expect(answer.pumpers[0]!.intake_psi).toBeCloseTo(63.3, 1)
  })
})
