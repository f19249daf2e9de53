import { area as turfArea, booleanPointInPolygon, point as turfPoint, polygon } from '@turf/turf'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { mapFeatures, readOsm, waterAreas, type MapFeature } from '@/lib/osm'
import { unpackers } from './unpackers'

const square = (south: number, west: number, side: number) =>
  [[0, 0], [0, 1], [1, 1], [1, 0], [0, 0]].map(([y = 0, x = 0]) => ({ lat: south + y * side, lon: west + x * side }))
const feature = (runs: MapFeature['runs'], more: Partial<MapFeature> = {}): MapFeature =>
  ({ layer: 'water', name: '', kind: 'pond', osmId: 1, details: '', shape: 'area', runs, isHole: runs.map((_, i) => i > 0), ...more })
const SQFT_PER_M2 = 1 / 0.3048 ** 2

describe('open water of a map', () => {
  it('has the surface that a general geometry library finds, holes taken out', () => {
    const runs = [square(45, -40, 0.004), square(45.001, -39.999, 0.001)]
    const [found] = waterAreas({ features: [feature(runs)] })
    const theirs = turfArea(polygon(runs.map((ring) => ring.map(({ lat, lon }) => [lon, lat]))))
    // Both on a sphere of the mean radius; theirs is curved, ours the plane that touches it.
    expect(found!.surface_sqft / (theirs * SQFT_PER_M2)).toBeCloseTo(1, 3)
  })

  it('is placed in the water, not on its island', () => {
    const runs = [square(45, -40, 0.004), square(45.0005, -39.9995, 0.003)]
    const { lat, lon } = waterAreas({ features: [feature(runs)] })[0]!.point
    expect(booleanPointInPolygon(turfPoint([lon, lat]), polygon(runs.map((ring) => ring.map((one) => [one.lon, one.lat]))))).toBe(true)
  })

  it('leaves out what runs, what is foul, and what is no water', () => {
    const ring = [square(45, -40, 0.004)]
    const others = [feature(ring, { kind: 'river' }), feature(ring, { kind: 'riverbank' }), feature(ring, { kind: 'wastewater' }), feature(ring, { layer: 'building' })]
    expect(waterAreas({ features: others })).toEqual([])
    expect(waterAreas({ features: [feature(ring, { kind: '' }), feature(ring, { kind: 'reservoir' })] }).map(({ kind }) => kind)).toEqual(['water', 'reservoir'])
  })

  it('of a real district is found whole, each place in its own water', async () => {
    const extract = await readOsm(new Uint8Array(readFileSync('tests/data/north-bayreuth.osm.pbf')), unpackers)
    if ('code' in extract) throw new Error(extract.code)
    const map = mapFeatures(extract)
    const found = waterAreas(map)
    expect(found.length).toBeGreaterThan(100)
    const byId = new Map(map.features.filter(({ layer }) => layer === 'water').map((one) => [one.osmId, one]))
    for (const { osmId, point, surface_sqft } of found) {
      const { runs, isHole } = byId.get(osmId)!
      const rings = runs.map((ring) => ring.map(({ lat, lon }) => [lon, lat]))
      const outer = rings.filter((_, i) => !isHole[i])
      if (outer.length > 1) continue
      expect(booleanPointInPolygon(turfPoint([point.lon, point.lat]), polygon(rings))).toBe(true)
      expect(surface_sqft / (turfArea(polygon(rings)) * SQFT_PER_M2)).toBeCloseTo(1, 3)
    }
  })
})
