import { collectionOf, type District, type EditBody, type Place } from '@/lib/plan'

/** The edits that take a place out of a district, with what in the district refers to it: one act, taken back as one. */
export function withoutPlace({ kind, item }: Place, district: District): EditBody[] {
  const clear = (collection: string, id: string, field: string): EditBody => ({ kind: 'setFields', collection, id, set: { [field]: null } })
  const referring = kind === 'source'
    ? district.draftSites.filter(({ sourceId }) => sourceId === item.id).map(({ id }) => clear('draftSites', id, 'sourceId'))
    : kind === 'station'
      ? district.apparatus.filter(({ stationId }) => stationId === item.id).map(({ id }) => clear('apparatus', id, 'stationId'))
      : []
  return [...referring, { kind: 'removeItem', collection: collectionOf[kind], id: item.id }]
}
