import { describe, expect, it } from 'vitest'
import { waterAway_ft, type DistrictMap, type MapFeature } from '@/lib/osm'

/** Feet to degrees of latitude: a nautical mile, 6,076 ft, is about one minute. */
const north = (feet: number) => 45 + feet / 6076 / 60
const east = (feet: number) => -40 + feet / 6076 / 60 / Math.cos((45 * Math.PI) / 180)
const at = (east_ft: number, north_ft: number) => ({ lat: north(north_ft), lon: east(east_ft) })
const feature = (part: Partial<MapFeature>): MapFeature => ({ layer: 'water', name: '', kind: 'pond', osmId: 1, details: '', shape: 'area', runs: [], isHole: [], ...part })
const pond = feature({ runs: [[at(0, 0), at(400, 0), at(400, 400), at(0, 400)], [at(150, 150), at(250, 150), at(250, 250), at(150, 250)]], isHole: [false, true] })
const brook = [feature({ layer: 'waterway', kind: 'stream', shape: 'line', name: 'Brook', runs: [[at(2000, 0), at(2000, 1000)]] }), feature({ layer: 'waterway', kind: 'stream', shape: 'line', name: 'Brook', runs: [[at(2000, 1000), at(2000, 4000)]] })]
const map = { features: [pond, ...brook] } as unknown as DistrictMap

describe('from the water of a source', () => {
  it('is 0 in the water, and the distance to the shore beside it', () => {
    expect(waterAway_ft(map, at(50, 50), at(100, 100))).toBe(0)
    expect(waterAway_ft(map, at(50, 50), at(200, -300))!).toBeCloseTo(300, -1)
  })

  it('is counted from the shore of an island too', () => {
    expect(waterAway_ft(map, at(50, 50), at(200, 200))!).toBeCloseTo(50, -1)
  })

  it('is along a stream, whatever pieces it is drawn in, and not from another water nearer by', () => {
    expect(waterAway_ft(map, at(2010, 500), at(2100, 3000))!).toBeCloseTo(100, -1)
    expect(waterAway_ft(map, at(2010, 500), at(500, 200))!).toBeGreaterThan(1400)
  })

  it('is not known where no water is drawn at the source', () => {
    expect(waterAway_ft(map, at(1000, 200), at(1000, 200))).toBeUndefined()
  })
})
