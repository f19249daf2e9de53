import { expect, test } from 'vitest'
import { simplifyWay } from '@/app/_hose/simplify-way'

const at = (lat: number, lon: number) => ({ lat, lon })
/** A hundredth of a thousandth of a degree of latitude is 1.1 m. */
const way = [at(0, 0), at(0.001, 0.00001), at(0.002, 0), at(0.002, 0.001), at(0.00201, 0.002), at(0.002, 0.003)]

test('corners nearer to the way than the tolerance go, the others and both ends stay', () => {
  expect(simplifyWay(way, 5)).toEqual([at(0, 0), at(0.002, 0), at(0.002, 0.003)])
})

test('with no tolerance every corner off the straight line stays', () => {
  expect(simplifyWay(way, 0.01)).toEqual(way)
})

test('a way that comes back to its begin keeps its far corner', () => {
  expect(simplifyWay([at(0, 0), at(0.01, 0), at(0, 0)], 5)).toEqual([at(0, 0), at(0.01, 0), at(0, 0)])
})
