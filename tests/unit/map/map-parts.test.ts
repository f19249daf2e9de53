import { describe, expect, it } from 'vitest'
import { crowdedNames, nameShift_px } from '@/app/_map/crowded-names'
import { findKeyStep } from '@/app/_map/key-step'
import { mercatorLine } from '@/app/_map/mercator'
import { wholeSpot } from '@/app/_map/paint/draw-labels'
import { graticuleStep } from '@/app/_map/paint/graticule-step'
import { labelsFrom } from '@/app/_map/paint/labels'
import { findRoadStyle } from '@/app/_map/paint/road-style'
import { roadLayers } from '@/lib/osm'

describe('Web Mercator', () => {
  it('agrees with the published example of EPSG:3857 (IOGP Guidance Note 7-2, Popular Visualisation Pseudo Mercator; from memory)', () => {
    // Latitude 24°22'54.433"N, longitude 100°20'00.000"W → E −11169055.58 m, N 2800000.00 m, on a sphere of 6378137 m.
    const [x = 0, y = 0] = mercatorLine([{ lat: 24 + 22 / 60 + 54.433 / 3600, lon: -(100 + 20 / 60) }])
    const around_m = 2 * Math.PI * 6378137
    expect((x - 0.5) * around_m).toBeCloseTo(-11169055.58, 1)
    expect((0.5 - y) * around_m).toBeCloseTo(2800000, 1)
  })
})

describe('moving by keys', () => {
  const press = (key: string, more: Partial<Parameters<typeof findKeyStep>[0]> = {}) => findKeyStep({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...more })

  it('goes the way of the arrow, further with Shift', () => {
    expect(press('ArrowRight')).toEqual([4, 0])
    expect(press('ArrowUp', { shiftKey: true })).toEqual([0, -40])
  })

  it('leaves every other key alone, and arrows the browser has a use for', () => {
    expect(press('a')).toBeUndefined()
    expect(press('ArrowLeft', { altKey: true })).toBeUndefined()
  })
})

const at = (x: number, y: number, isAlwaysShown = false) => ({ x, y, width: 60, height: 14, isAlwaysShown })

describe('names of sites', () => {
  it('all show where there is room', () => {
    expect(crowdedNames([at(0, 0), at(100, 0)])).toEqual([false, false])
  })

  it('give way to those before them, and to every symbol', () => {
    expect(crowdedNames([at(0, 0), at(40, 0)])).toEqual([false, true])
    expect(crowdedNames([at(0, 0), at(0, 24)])).toEqual([true, false])
  })

  it('one that is asked for shows whatever lies there', () => {
    expect(crowdedNames([at(0, 0, true), at(0, 24)])).toEqual([false, false])
  })
})

describe('a name at the edge of the map', () => {
  it('is moved in by as much as is cut off, and left alone where it has room', () => {
    expect(nameShift_px(40, 120, 390)).toBe(24)
    expect(nameShift_px(360, 120, 390)).toBe(-34)
    expect(nameShift_px(200, 120, 390)).toBe(0)
  })

  it('goes with its symbol when that has left the map', () => {
    expect(nameShift_px(-5, 120, 390)).toBe(0)
    expect(nameShift_px(400, 120, 390)).toBe(0)
  })

  it('is compared with the others where it stands after the move', () => {
    expect(crowdedNames([{ ...at(0, 0), shift_px: 40 }, at(90, 0)])).toEqual([false, true])
  })
})

describe('names of the map itself at its edge', () => {
  const view = { left: 0, top: 0, right: 390, bottom: 300 }
  const spot = (x: number, y: number, angle = 0) => ({ x, y, angle, length_px: Infinity })

  it('are moved in whole while their place is in sight', () => {
    expect(wholeSpot(spot(380, 150), 80, view)).toMatchObject({ x: 347, y: 150 })
    expect(wholeSpot(spot(200, 2), 80, view)).toMatchObject({ x: 200, y: 8 })
    expect(wholeSpot(spot(200, 150), 80, view)).toEqual(spot(200, 150))
  })

  it('are left out where they would be cut: along a road, or when their place is out of sight', () => {
    expect(wholeSpot(spot(380, 150, 0.3), 80, view)).toBeUndefined()
    expect(wholeSpot(spot(400, 150), 80, view)).toBeUndefined()
    expect(wholeSpot(spot(500, 150), 80, view)).toEqual(spot(500, 150))
  })
})

describe('roads', () => {
  it('are wider the more they carry, and never thinner nearer', () => {
    for (let zoom = 13; zoom <= 18; zoom += 1) {
      const widths = roadLayers.map((layer) => findRoadStyle(layer, zoom)?.width_px ?? 0)
      expect(widths.slice(1).every((width, i) => width > widths[i]! || roadLayers[i] === 'track')).toBe(true)
      for (const layer of roadLayers) expect(findRoadStyle(layer, zoom + 1)!.width_px).toBeGreaterThanOrEqual(findRoadStyle(layer, zoom)!.width_px)
    }
  })

  it('of little use are left out from afar', () => {
    expect(findRoadStyle('serviceRoad', 11)).toBeUndefined()
    expect(findRoadStyle('majorRoad', 6)).toBeDefined()
  })
})

describe('the graticule', () => {
  it('has the finest lines that still stand apart', () => {
    expect(graticuleStep(1 / 900, 90)).toBeCloseTo(1 / 6, 12)
    expect(graticuleStep(1, 90)).toBe(10)
  })
})

describe('names on the map', () => {
  const feature = (layer: 'place' | 'water' | 'localRoad' | 'building', name: string, kind = '') => ({
    layer, name, kind, osmId: 1, details: '', shape: 'line' as const, isHole: [], runs: [[{ lat: 50, lon: 11 }, { lat: 50.01, lon: 11.02 }]],
  })

  it('come most important first; what has none or is only a building is left out', () => {
    const labels = labelsFrom([feature('localRoad', 'Mill Lane'), feature('building', 'Shed'), feature('water', 'Mill pond'), feature('place', ' '), feature('place', 'Alder Hollow', 'village')])
    expect(labels.map(({ text }) => text)).toEqual(['Alder Hollow', 'Mill pond', 'Mill Lane'])
  })
})
