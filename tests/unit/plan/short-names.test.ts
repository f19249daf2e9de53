import { expect, it } from 'vitest'
import { shortNames } from '@/lib/plan'

const shortOf = (...names: string[]) => [...shortNames(names.map((name, k) => ({ id: `u${k}`, name }))).values()]

it('is the number that a vehicle goes by, or its first letters', () => {
  expect(shortOf('Tender 12', 'Tanker T-7', 'Water 3B', 'Engine #21', 'Big Blue', 'Thunderer', 'Tender, 2,000 gal')).toEqual(['12', 'T-7', '3B', '21', 'BB', 'Thun', 'T2G'])
})

it('tells apart those that would be alike, and never changes with who is shown', () => {
  expect(shortOf('Tender 1', 'Water 1', 'Tender 2')).toEqual(['T1', 'W1', '2'])
  expect(shortOf('Tender 1', 'Tender 1', 'Truck 1')).toEqual(['T1a', 'T1b', 'T1c'])
  const many = shortOf(...Array.from({ length: 30 }, () => 'Tender'))
  expect(new Set(many).size).toBe(30)
})
