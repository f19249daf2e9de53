import type { District } from './documents/district'
import type { EditBody } from './edits/edit'

/** Lists of a district of which an item is taken out. */
type DistrictList = 'sources' | 'draftSites' | 'hazards' | 'roadNotes' | 'stations' | 'apparatus' | 'equipment'

/** The edits that take an item out of a district, with what in the district refers to it: one act, taken back as one. */
export function withoutItem(collection: DistrictList, itemId: string, { draftSites, apparatus, equipment }: District): EditBody[] {
  const clear = (list: DistrictList, items: readonly { readonly id: string }[], field: string): EditBody[] =>
    items.map(({ id }) => ({ kind: 'setFields', collection: list, id, set: { [field]: null } }))
  const referring = {
    sources: () => clear('draftSites', draftSites.filter(({ sourceId }) => sourceId === itemId), 'sourceId'),
    stations: () => clear('apparatus', apparatus.filter(({ stationId }) => stationId === itemId), 'stationId'),
    apparatus: () => clear('equipment', equipment.filter(({ carriedBy }) => carriedBy === itemId), 'carriedBy'),
  }
  const cleared = collection in referring ? referring[collection as keyof typeof referring]() : []
  return [...cleared, { kind: 'removeItem', collection, id: itemId }]
}
