import type { Tags } from '../roads/network'

export type NamedPlace = { x: number; y: number; tags: Tags }

/** Names on the map; none is taken from a real department or a well-known place. */
export const namedPlaces: readonly NamedPlace[] = [
  { x: 5985, y: 5560, tags: { place: 'village', name: 'Ostrel Mills', population: '840' } },
  { x: 8790, y: 3400, tags: { place: 'village', name: 'Dunmarrow', population: '310' } },
  { x: 560, y: 3800, tags: { place: 'hamlet', name: 'Fallow Gap' } },
  { x: 9980, y: 6330, tags: { place: 'hamlet', name: 'Sorrel Corners' } },
  { x: 5020, y: 2480, tags: { place: 'hamlet', name: 'Kiln Hollow' } },
  { x: 3650, y: 3980, tags: { place: 'locality', name: 'Hickory Bend' } },
  { x: 6300, y: 7250, tags: { place: 'locality', name: 'Gander Hill' } },
  { x: 1300, y: 7150, tags: { place: 'locality', name: 'Badger Hollow' } },
  { x: 3700, y: 6900, tags: { natural: 'peak', name: 'Sugarbush Hill' } },
  { x: 6750, y: 1900, tags: { natural: 'peak', name: 'Powderhouse Hill' } },
  { x: 10900, y: 3350, tags: { natural: 'peak', name: 'Eastview Knob' } },
  { x: 300, y: 8200, tags: { natural: 'peak', name: 'Hatchet Hill' } },
  { x: 5900, y: 8300, tags: { natural: 'peak', name: 'The Lookout' } },
]
