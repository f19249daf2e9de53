import { describe, expect, it } from 'vitest'
import { allBounds, openingBounds } from '@/app/_map/where-to-look'
import type { MapRoute, MapSite } from '@/app/_map'
import { isInside, type Point } from '@/lib/geo'

const home = { south: 45, west: -70, north: 45.02, east: -69.98 }
const at = (lat: number, lon: number): Point => ({ lat, lon })
const route = (path: Point[], isQuiet = false): MapRoute => ({ id: JSON.stringify(path), path, load: 'full', by: 'routed', isQuiet })
const site = (id: string, point: Point, isGhost = false): MapSite => ({ id, kind: 'station', name: id, point, isGhost })
const between = route([at(45, -70), at(45.03, -69.99), at(45.02, -69.98)])
const near = route([at(45.02, -69.98), at(45.04, -70.02)], true)
const far = route([at(45.02, -69.98), at(45.4, -69.5)], true)

describe('where a map looks first', () => {
  it('is at the whole of the ways between the sites', () => {
    for (const point of between.path) expect(isInside(openingBounds({ home, routes: [between] })!, point)).toBe(true)
  })

  it('takes in the ways from the stations, unless the rest would be small beside them', () => {
    for (const point of near.path) expect(isInside(openingBounds({ home, routes: [between, near] })!, point)).toBe(true)
    expect(openingBounds({ home, routes: [between, far] })).toEqual(openingBounds({ home, routes: [between] }))
  })

  it('is at all sites without a home, and at the district without any', () => {
    expect(isInside(openingBounds({ sites: [site('a', at(46, -71)), site('b', at(46.1, -71.1))] })!, at(46.05, -71.05))).toBe(true)
    expect(openingBounds({ district: { bounds: home } })).toBe(home)
  })
})

it('shows all: stations, vehicles and ways however far off, and not what is merely about', () => {
  const all = allBounds({ home, routes: [between, far], sites: [site('station', at(44.8, -70.4)), site('about', at(47, -72), true)] })!
  for (const point of [...between.path, ...far.path, at(44.8, -70.4)]) expect(isInside(all, point)).toBe(true)
  expect(isInside(all, at(47, -72))).toBe(false)
})
