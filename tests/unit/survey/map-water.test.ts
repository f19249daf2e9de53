import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { listedWater, mapWater, type MapWater } from '@/app/_survey/map-water'
import { acceptEdit, detailWords, nameOfMapWater } from '@/app/_survey/source-from-map'
import { applyEdit } from '@/lib/plan'
import { mapFeatures, readOsm } from '@/lib/osm'
import { buildRoadGraph } from '@/lib/roads'
import { smallBundle } from '@/tests/fixtures/bundle'
import { unpackers } from '../osm/unpackers'

let water: readonly MapWater[] = []
beforeAll(async () => {
  const extract = await readOsm(new Uint8Array(readFileSync('tests/data/north-bayreuth.osm.pbf')), unpackers)
  if ('code' in extract) throw new Error(extract.code)
  water = mapWater(mapFeatures(extract), buildRoadGraph(extract).graph)
})
const any = { search: '', order: 'road' } as const
const nameOf = (one: MapWater) => nameOfMapWater(one, 'us')

describe('water of the map', () => {
  it('is open water and tagged points, each once', () => {
    expect(water.filter(({ surface_sqft }) => surface_sqft !== undefined).length).toBeGreaterThan(100)
    // 20 hydrants stand in the extract (counted from its XML with a text search).
    expect(water.filter(({ kind }) => kind === 'hydrant' || kind === 'pondHydrant')).toHaveLength(20)
    expect(new Set(water.map(({ osmId, surface_sqft }) => `${osmId} ${surface_sqft === undefined}`)).size).toBe(water.length)
  })

  it('comes nearest to a road first, largest first, or nearest to a hazard, as asked', () => {
    const roads = listedWater(water, any, [], nameOf).map(({ road }) => road?.away_ft ?? Infinity)
    expect(roads).toEqual([...roads].sort((a, b) => a - b))
    const sizes = listedWater(water, { ...any, order: 'size' }, [], nameOf).map(({ surface_sqft }) => surface_sqft ?? 0)
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a))
    const there = water[40]!
    expect(listedWater(water, { ...any, order: 'hazard' }, [there.point], nameOf)[0]).toBe(there)
  })

  it('is narrowed by size, kind and words', () => {
    const large = listedWater(water, { ...any, atLeast_sqft: 43_560 }, [], nameOf)
    expect(large.length).toBeGreaterThan(0)
    expect(large.every(({ surface_sqft = 0 }) => surface_sqft >= 43_560)).toBe(true)
    expect(listedWater(water, { ...any, kind: 'open' }, [], nameOf).every(({ surface_sqft }) => surface_sqft !== undefined)).toBe(true)
    const named = water.find(({ name }) => name !== '')
    if (named) expect(listedWater(water, { ...any, search: named.name.toUpperCase() }, [], nameOf)).toContain(named)
  })

  it('without a name is called by kind, size and road', () => {
    const pond: MapWater = { osmId: 7, kind: 'pondArea', name: '', details: '', point: { lat: 45, lon: -40 }, surface_sqft: 0.4 * 43_560, road: { name: 'Mill Road', away_ft: 60 } }
    expect(nameOfMapWater(pond, 'us')).toBe('Pond, 0.4\u00a0acre, near Mill Road')
    // 0.4 acre is 0.16 ha: 4,046.86 square metres to the acre (NIST Handbook 44, appendix C).
    expect(nameOfMapWater(pond, 'metric')).toBe('Pond, 0.16\u00a0ha, near Mill Road')
  })

  it('is taken in as something from the map that nobody has surveyed', () => {
    for (const one of water) {
      const applied = applyEdit(smallBundle().district, acceptEdit(one, '2015-01-01T00:00:00Z', 'us'))
      if ('code' in applied) throw new Error(`${applied.code} ${JSON.stringify(applied.values)}`)
      const added = applied.doc.sources.at(-1)!
      expect(added.evidence?.point).toMatchObject({ mark: 'assumed', source: expect.stringContaining('OpenStreetMap object') })
      expect(added.notes).toContain('not surveyed')
      expect(added.usable_gal).toBeUndefined()
      if (one.surface_sqft !== undefined) expect(added.evidence?.surface_sqft?.mark).toBe('computed')
    }
  })
})

describe('what the map says of a point', () => {
  it('is said in plain words', () => {
    // Bare diameters are millimetres and bare pressures bar, by the convention of the open tags; 100 mm is 3.94 in, 4 bar 58 psi.
    expect(detailWords('fire_hydrant:type=pillar;fire_hydrant:diameter=100;access=private', 'metric')).toBe('standing hydrant · main of 100\u00a0mm · on private ground')
    expect(detailWords('fire_hydrant:diameter=6"', 'us')).toBe('main of 6\u00a0in')
    expect(detailWords('fire_hydrant:pressure=4', 'us')).toBe('pressure 58\u00a0psi')
    expect(detailWords('fire_hydrant:diameter=80-100', 'us')).toBe('main of 80-100')
    expect(detailWords('water_source=groundwater;couplings:diameters=75;110;ref=H 12', 'metric')).toBe('water from the ground · outlets of 75\u00a0mm, 110\u00a0mm · marked H 12')
    expect(detailWords('fire_hydrant:count=2;fire_hydrant:type=odd_kind', 'us')).toBe('2 hydrants · odd kind')
  })

  it('shows no raw tag for anything in a real district', () => {
    for (const { details } of water) expect(detailWords(details, 'us')).not.toMatch(/[=_]|\w:\w/)
  })
})
