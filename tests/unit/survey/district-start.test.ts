import { describe, expect, it } from 'vitest'
import { startEdit } from '@/app/_survey/district-start'
import { isNowhere } from '@/app/_survey/is-nowhere'
import { emptyDistrict } from '@/app/_home/create-district'
import { distanceM } from '@/lib/geo'
import { applyEdit } from '@/lib/plan'

const district = emptyDistrict('d1', 'North hills', 'us')
const point = { lat: 44.26, lon: -72.58 }

describe('where a new district lies', () => {
  it('is asked for while it has neither map nor places', () => {
    expect(isNowhere(district)).toBe(true)
    expect(isNowhere({ ...district, stations: [{ id: 'st1', name: 'Station 1', point }] as unknown as typeof district.stations })).toBe(false)
    expect(isNowhere(district, { fillSites: [], dumpSites: [], fireGround: point })).toBe(false)
  })

  it('is around the point that is given, some miles wide', () => {
    const made = applyEdit(district, startEdit(point))
    if ('code' in made) throw new Error(made.code)
    const { bounds } = made.doc as typeof district
    expect(isNowhere(made.doc as typeof district)).toBe(false)
    // By the great circle: 8 km to each side.
    expect(distanceM(point, { lat: bounds?.north ?? 0, lon: point.lon })).toBeCloseTo(8000, -2)
    expect(distanceM(point, { lat: point.lat, lon: bounds?.east ?? 0 })).toBeCloseTo(8000, -2)
  })
})
