import { expect, test } from 'vitest'
import { findCrossings } from '@/lib/roads'
import { distanceM } from '@/lib/geo'
import { feetFromMetres } from '@/lib/units'
import { graphOf, placeOf, type Town } from './town'

/** Two roads south, one of them over a bridge, and one east that the line runs along. */
const town: Town = {
  grid: `
    ABC
    ...
    DEF`,
  ways: [
    { id: 1, through: 'AD', tags: { highway: 'tertiary', name: 'First Road' } },
    { id: 2, through: 'BE', tags: { highway: 'tertiary', name: 'High Road', bridge: 'yes' } },
    { id: 3, through: 'CF', tags: { highway: 'residential' } },
    { id: 4, through: 'DEF', tags: { highway: 'tertiary', name: 'Long Road' } },
  ],
}
const [a, d, f] = ['A', 'D', 'F'].map((letter) => placeOf(town, letter)) as [ReturnType<typeof placeOf>, ReturnType<typeof placeOf>, ReturnType<typeof placeOf>]
const middle = (a.lat + d.lat) / 2

test('a line across country crosses the roads it cuts, but no bridge', async () => {
  const west = { lat: middle, lon: a.lon - 0.005 }, east = { lat: middle, lon: f.lon + 0.005 }
  const found = findCrossings(await graphOf(town), [west, east])
  expect(found.map(({ name }) => name)).toEqual(['First Road', ''])
  // Half a grid step west of the first road, on a parallel: the distance is that to the road by the sphere.
  expect(found[0]!.at_ft).toBeCloseTo(feetFromMetres(distanceM(west, { lat: middle, lon: a.lon })), 0)
})

test('a line along a road does not cross it', async () => {
  expect(findCrossings(await graphOf(town), [{ lat: d.lat + 0.00002, lon: d.lon + 0.001 }, { lat: d.lat - 0.00002, lon: f.lon - 0.001 }]).filter(({ name }) => name === 'Long Road')).toEqual([])
})
