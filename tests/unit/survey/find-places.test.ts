import { expect, test } from 'vitest'
import { findPlaces, readyPlaces } from '@/app/_survey/find-places'
import type { District } from '@/lib/plan'

const point = { lat: 0, lon: 0 }
const district: District = {
  id: 'd', name: 'District', stations: [{ id: 's', name: 'Station 1', point }], hazards: [], roadNotes: [], apparatus: [], equipment: [],
  sources: [{ id: 'mill', name: 'Mill water', kind: 'pond', point, access: 'By the north gate' }, { id: 'hydrant', name: 'Green', kind: 'pressureHydrant', point }],
  draftSites: [{ id: 'bank', name: 'East bank', sourceId: 'mill', point }],
}
const found = (search: string) => findPlaces(readyPlaces(district), search).map(({ item }) => item.id)

test('a search finds a place by its name, its kind, how one gets there, and the water it stands at, in any case', () => {
  expect(found('green')).toEqual(['hydrant'])
  expect(found('POND')).toEqual(['mill'])
  expect(found('north gate')).toEqual(['mill'])
  expect(found('mill water')).toEqual(['mill', 'bank'])
})

test('every word must be found, and none typed finds all in order', () => {
  expect(found('mill east')).toEqual(['bank'])
  expect(found('mill green')).toEqual([])
  expect(found('  ')).toEqual(['mill', 'hydrant', 'bank', 's'])
})
