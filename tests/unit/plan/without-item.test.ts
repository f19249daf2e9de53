import { expect, test } from 'vitest'
import { withoutItem, type District } from '@/lib/plan'

const point = { lat: 45, lon: -40 }
const district = {
  id: 'd', name: 'Valley', roadNotes: [], hazards: [],
  stations: [{ id: 'st', name: 'Station', point }],
  sources: [{ id: 'so', name: 'Pond', kind: 'pond', point }],
  draftSites: [{ id: 'ds1', name: 'Bank', sourceId: 'so', point }, { id: 'ds2', name: 'Ramp', sourceId: 'other', point }],
  apparatus: [{ id: 'p', name: 'Engine', kind: 'pumper', stationId: 'st' }],
  equipment: [{ id: 'e', name: 'Tank', kind: 'portableTank', carriedBy: 'p' }],
} as unknown as District

test('an item that nothing refers to is taken out alone', () => {
  expect(withoutItem('equipment', 'e', district)).toEqual([{ kind: 'removeItem', collection: 'equipment', id: 'e' }])
  expect(withoutItem('draftSites', 'ds1', district)).toEqual([{ kind: 'removeItem', collection: 'draftSites', id: 'ds1' }])
})

test.each([
  ['sources', 'so', 'draftSites', 'ds1', 'sourceId'],
  ['stations', 'st', 'apparatus', 'p', 'stationId'],
  ['apparatus', 'p', 'equipment', 'e', 'carriedBy'],
] as const)('what refers to one of the %s is cleared before it goes', (list, id, otherList, otherId, field) => {
  expect(withoutItem(list, id, district)).toEqual([
    { kind: 'setFields', collection: otherList, id: otherId, set: { [field]: null } }, { kind: 'removeItem', collection: list, id },
  ])
})
