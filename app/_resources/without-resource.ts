import type { District, EditBody, Resource } from '@/lib/plan'

/** The edits that take a resource out of a district, with what in the district refers to it. */
export function withoutResource({ list, item }: Resource, district: District): EditBody[] {
  const clear = (collection: string, id: string, field: string): EditBody => ({ kind: 'setFields', collection, id, set: { [field]: null } })
  const referring = list === 'apparatus'
    ? district.equipment.filter(({ carriedBy }) => carriedBy === item.id).map(({ id }) => clear('equipment', id, 'carriedBy'))
    : list === 'stations'
      ? district.apparatus.filter(({ stationId }) => stationId === item.id).map(({ id }) => clear('apparatus', id, 'stationId'))
      : []
  return [...referring, { kind: 'removeItem', collection: list, id: item.id }]
}
