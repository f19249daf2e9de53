import { heading, spot } from '../geometry/spot'
import type { Tags } from '../roads/network'
import { block, round, type Building } from './building'
import type { GroundIndex } from './ground-index'

export type Landmark = { key: string; at: readonly [number, number]; facing: readonly [number, number]; long_m: number; wide_m: number; tags: Tags }

/** Buildings that have a name or a purpose of their own. */
const landmarks: readonly Landmark[] = [
  { key: 'station1', at: [5668, 5352], facing: [1, 0.16], long_m: 26, wide_m: 17, tags: { building: 'fire_station', amenity: 'fire_station', name: 'Ostrel Valley Station 1' } },
  { key: 'station2', at: [8622, 3345], facing: [0.75, -0.66], long_m: 22, wide_m: 15, tags: { building: 'fire_station', amenity: 'fire_station', name: 'Ostrel Valley Station 2' } },
  { key: 'station7', at: [492, 3652], facing: [1, -0.16], long_m: 24, wide_m: 16, tags: { building: 'fire_station', amenity: 'fire_station', name: 'Fallow Gap Station 7' } },
  { key: 'gristMill', at: [5466, 5652], facing: [0.5, 1], long_m: 20, wide_m: 13, tags: { building: 'industrial', name: 'Old Grist Mill' } },
  { key: 'feedMill', at: [5882, 5290], facing: [1, 0.02], long_m: 32, wide_m: 18, tags: { building: 'industrial', name: 'Ostrel Feed & Grain' } },
  { key: 'school', at: [9012, 3186], facing: [1, -0.1], long_m: 44, wide_m: 19, tags: { building: 'school', amenity: 'school', name: 'Dunmarrow Village School' } },
  { key: 'church', at: [5742, 5472], facing: [0.15, 1], long_m: 24, wide_m: 11, tags: { building: 'church', amenity: 'place_of_worship', name: 'Mills Church' } },
  { key: 'meetinghouse', at: [8650, 3525], facing: [1, 0], long_m: 20, wide_m: 12, tags: { building: 'church', amenity: 'place_of_worship', name: 'Dunmarrow Meetinghouse' } },
  { key: 'townHall', at: [5925, 5505], facing: [0.85, 0.5], long_m: 22, wide_m: 13, tags: { building: 'public', amenity: 'townhall', name: 'Ostrel Mills Town Hall' } },
  { key: 'depot', at: [5975, 5282], facing: [1, 0.03], long_m: 22, wide_m: 8, tags: { building: 'train_station', name: 'Old Depot' } },
  { key: 'tannery', at: [5722, 5290], facing: [0.1, 1], long_m: 34, wide_m: 14, tags: { building: 'industrial', name: 'Tannery Works' } },
  { key: 'store', at: [8720, 3325], facing: [0.75, -0.66], long_m: 16, wide_m: 11, tags: { building: 'retail', shop: 'general', name: 'Dunmarrow Store' } },
  { key: 'garage', at: [5427, 5499], facing: [0.7, -0.78], long_m: 26, wide_m: 14, tags: { building: 'garage', name: 'Town Garage' } },
]

const feedSilos: readonly (readonly [number, number])[] = [[5906, 5282], [5906, 5297], [5862, 5278]]

export function placeLandmarks(ground: GroundIndex): Building[] {
  const built = landmarks.map(({ at: [x, y], facing: [fx, fy], long_m, wide_m, tags }): Building => {
    const ring = block(spot(x, y), heading(spot(0, 0), spot(fx, fy)), long_m, wide_m)
    ground.addRing(ring)
    return { ring, tags }
  })
  for (const [x, y] of feedSilos) {
    const ring = round(spot(x, y), 4.2)
    ground.addRing(ring)
    built.push({ ring, tags: { building: 'silo' } })
  }
  return built
}
