import type { Apparatus } from './documents/apparatus'
import type { District, Station } from './documents/district'
import type { Equipment } from './documents/equipment'

/** Groups of the screen, in order. */
export const resourceKinds = ['pumper', 'tender', 'portablePump', 'hose', 'portableTank', 'hardSuction', 'strainer', 'jetSiphon', 'station'] as const
export type ResourceKind = (typeof resourceKinds)[number]

export type Resource =
  | { readonly list: 'apparatus'; readonly kind: ResourceKind; readonly item: Apparatus }
  | { readonly list: 'equipment'; readonly kind: ResourceKind; readonly item: Equipment }
  | { readonly list: 'stations'; readonly kind: 'station'; readonly item: Station }

/** Every resource of a district, by list. */
export const resourcesOf = (district: District): Resource[] => [
  ...district.apparatus.map((item) => ({ list: 'apparatus' as const, kind: item.kind, item })),
  ...district.equipment.map((item) => ({ list: 'equipment' as const, kind: item.kind, item })),
  ...district.stations.map((item) => ({ list: 'stations' as const, kind: 'station' as const, item })),
]

/** The station a resource comes from: its own, or that of what carries it. */
export function stationIdOf(resource: Resource, district: District): string | undefined {
  if (resource.list === 'stations') return resource.item.id
  if (resource.list === 'apparatus') return resource.item.stationId
  const { carriedBy } = resource.item
  return district.apparatus.find(({ id }) => id === carriedBy)?.stationId
}
