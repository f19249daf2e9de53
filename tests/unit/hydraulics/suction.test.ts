import { expect, test } from 'vitest'
import { dryHydrantLoss_ft, hardSuctionLoss_ft, strainerCover, suctionCoefficient, suctionIssues, suctionLossAt1000gpm_ft, velocityHead_ft } from '@/lib/hydraulics'

const hose = { size_in: 6, length_ft: 20, lineCount: 1 } as const

test('sizes of the table are the table, sizes between lie between, sizes beyond say so', () => {
  expect([4, 4.5, 5, 6].map((size_in) => suctionCoefficient(size_in).from)).toEqual(Array(4).fill('handbook'))
  expect(suctionCoefficient(5.5).from).toBe('between')
  expect(suctionLossAt1000gpm_ft({ ...hose, size_in: 5.5 })).toBeGreaterThan(3.4)
  expect(suctionLossAt1000gpm_ft({ ...hose, size_in: 5.5 })).toBeLessThan(8.4)
  expect([3, 8].map((size_in) => suctionCoefficient(size_in).from)).toEqual(['beyond', 'beyond'])
  expect(suctionIssues({ ...hose, size_in: 8 }).map(({ code }) => code)).toEqual(['suction-size-extrapolated'])
})

test('8 in loses less than 6 in, 3 in more than 4 in', () => {
  expect(suctionLossAt1000gpm_ft({ ...hose, size_in: 8 })).toBeLessThan(3.4)
  expect(suctionLossAt1000gpm_ft({ ...hose, size_in: 3 })).toBeGreaterThan(20)
})

test('a floating or low-level strainer costs velocity heads, assumed and said', () => {
  const plain = suctionLossAt1000gpm_ft(hose), head_ft = velocityHead_ft(1000, 6)
  expect(suctionLossAt1000gpm_ft({ ...hose, strainer: 'floating' })).toBeCloseTo(plain + head_ft, 9)
  expect(suctionLossAt1000gpm_ft({ ...hose, strainer: 'low-level' })).toBeCloseTo(plain + 1.5 * head_ft, 9)
  expect(suctionIssues({ ...hose, strainer: 'low-level' }).map(({ code }) => code)).toEqual(['strainer-loss-assumed'])
})

test('a measured strainer replaces the assumption', () => {
  const measured = { ...hose, strainer: 'low-level', strainerExtraAt1000gpm_ft: 4 } as const
  expect(suctionLossAt1000gpm_ft(measured)).toBeCloseTo(7.4, 9)
  expect(suctionIssues(measured)).toEqual([])
})

test('an intake loss is added to each line', () => {
  expect(hardSuctionLoss_ft({ ...hose, intakeExtraAt1000gpm_ft: 6, flow_gpm: 500 })).toBeCloseTo((3.4 + 6) / 4, 9)
  expect(hardSuctionLoss_ft({ ...hose, lineCount: 2, intakeExtraAt1000gpm_ft: 6, flow_gpm: 1000 })).toBeCloseTo((3.4 + 6) / 4, 9)
})

test('lines of different size side by side lose less than the wider alone', () => {
  expect(suctionLossAt1000gpm_ft([hose, { ...hose, size_in: 4 }])).toBeLessThan(3.4)
})

test('fittings of a dry hydrant count as length', () => {
  const plain = dryHydrantLoss_ft({ pipe_in: 8, length_ft: 60 }, 1000)
  expect(dryHydrantLoss_ft({ pipe_in: 8, length_ft: 20, elbow90Count: 1, elbow45Count: 1, reducerCount: 1 }, 1000)).toBeCloseTo(plain, 9)
})

test('the cover advised is never under the 2 ft rule', () => {
  expect(strainerCover(100, 6).advised_ft).toBe(2)
  const { advised_ft, vortex_ft } = strainerCover(1000, 6)
  expect(advised_ft).toBe(vortex_ft)
})
