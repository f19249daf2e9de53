import { expect, test } from 'vitest'
import type { MapSite } from '@/app/_map'
import { isSameSite } from '@/app/_map/same-site'

const site: Required<MapSite> = { id: 'a', kind: 'fillSite', point: { lat: 1, lon: 2 }, name: 'A', letter: 'F1', note: 'limits', isMarked: true, isChosen: true, isGhost: true, isMovable: true }
const other: Required<MapSite> = { id: 'b', kind: 'dumpSite', point: { lat: 1, lon: 3 }, name: 'B', letter: 'F2', note: 'fills', isMarked: false, isChosen: false, isGhost: false, isMovable: false }

test('a site made again with all as it was is the same', () => {
  expect(isSameSite(site, { ...site, point: { ...site.point } })).toBe(true)
})

test('whatever of it has changed, it is drawn anew', () => {
  for (const field of Object.keys(site) as (keyof MapSite)[]) expect(isSameSite(site, { ...site, [field]: other[field] }), field).toBe(false)
})
