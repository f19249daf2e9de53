import { expect, test } from 'vitest'
import {
  draftLimitHeight_in, draftLimitVolume_gal, dumpRates_gpm, gravityDump_gpm, openingDiameter_in, portableTankCapacity_gal, portableTankDepth_in, portableTankVolume_gal, usableTank_gal,
} from '@/lib/hydraulics'

const level = { capacity_gal: 3000, height_in: 30 }

test('nine tenths of a tank are usable unless said otherwise', () => {
  expect([usableTank_gal(3000), usableTank_gal(3000, 1)]).toEqual([2700, 3000])
  expect(() => usableTank_gal(3000, 1.1)).toThrow('usableShare')
})

test('a level tank fills in line with its depth and spills at its lip', () => {
  expect([0, 10, 30, 40].map((depth_in) => portableTankVolume_gal(level, depth_in))).toEqual([0, 1000, 3000, 3000].map((gal) => expect.closeTo(gal, 6)))
})

test('a slope costs half its fall over the floor', () => {
  // 12 in of fall across the floor of a 30 in tank: (30 − 6) / 30 of it is left.
  const side_ft = 10
  const sloping = { ...level, lengthDownSlope_ft: side_ft, slopeShare: 0.1 }
  expect(portableTankCapacity_gal(sloping)).toBeCloseTo(2400, 6)
  expect(portableTankDepth_in(sloping, 2400)).toBeCloseTo(30, 6)
})

test('while the upper floor is dry the water is a wedge', () => {
  const sloping = { ...level, lengthDownSlope_ft: 10, slopeShare: 0.1 }
  // Wedge 6 in deep runs 5 ft up the floor: a quarter of the wedge at 12 in.
  expect(portableTankVolume_gal(sloping, 6)).toBeCloseTo(portableTankVolume_gal(sloping, 12) / 4, 6)
})

test('the draft limit is 4 in at 500 gpm and 8 in at 1,000 unless measured', () => {
  expect([0, 100, 500, 1000, 1500].map((gpm) => draftLimitHeight_in(gpm))).toEqual([2, 2, 4, 8, 12])
  const measured = [{ flow_gpm: 1000, height_in: 5 }, { flow_gpm: 500, height_in: 3 }]
  expect([500, 750, 1000].map((gpm) => draftLimitHeight_in(gpm, measured))).toEqual([3, 4, 5])
  expect(draftLimitHeight_in(1250, measured)).toBe(7)
  expect(draftLimitHeight_in(100, [{ flow_gpm: 500, height_in: 1.5 }])).toBe(1.5)
})

test('the draft limit of a level tank is its share of the volume', () => {
  expect(draftLimitVolume_gal(level, 1000)).toBeCloseTo(800, 6)
})

test('a square dump flows as the round one of its area', () => {
  expect(openingDiameter_in({ width_in: 10, height_in: 10 })).toBeCloseTo(11.28, 2)
  expect(openingDiameter_in({ diameter_in: 8 })).toBe(8)
})

test('vent and baffles cap a dump', () => {
  expect(gravityDump_gpm({ diameter_in: 10 }, 4, 0.8, 1200)).toBe(1200)
  expect(dumpRates_gpm({ tank_gal: 2000, usable_gal: 1800, fullHead_ft: 4, opening: { diameter_in: 10 }, cap_gpm: 900 }, 4)).toEqual(Array(4).fill(expect.closeTo(900, 6)))
})

test('under gravity alone a tank empties in twice the time its first rate would take', () => {
  const tank = { tank_gal: 2000, usable_gal: 2000, fullHead_ft: 4, opening: { diameter_in: 6 } }
  // Torricelli, from any hydraulics text.
  expect(dumpRates_gpm(tank, 1)[0]).toBeCloseTo(gravityDump_gpm({ diameter_in: 6 }, 4) / 2, 6)
})

test('a load that is no load, or more than the tank, throws', () => {
  const tank = { tank_gal: 2000, usable_gal: 2001, fullHead_ft: 4, opening: { diameter_in: 6 } }
  expect(() => dumpRates_gpm(tank)).toThrow('usable_gal')
  expect(() => dumpRates_gpm({ ...tank, usable_gal: 1800, emptyHead_ft: 4 })).toThrow('fullHead_ft')
  expect(() => dumpRates_gpm({ ...tank, usable_gal: 1800 }, 0)).toThrow('partCount')
})
