import type { Bundle, Lay } from '../../plan'
import type { ProfileHeight } from '../../terrain'
import { shortHash } from '../short-hash'

/** Key of the ground under a lay: its way and the elevation it was read from. Heights under another key are stale and never used. */
export const layHeightsKey = ({ terrain, roads }: Pick<Bundle['district'], 'terrain' | 'roads'>, { points, standsOnRoads, pumperIds }: Pick<Lay, 'points' | 'standsOnRoads' | 'pumperIds'>): string =>
  `${standsOnRoads ? `${roads?.hash.slice(0, 16) ?? ''}>${shortHash(pumperIds.join(' '))}>` : ''}${terrain?.hash.slice(0, 16) ?? ''}>${points.length}>${shortHash(points.map(({ lat, lon }) => `${lat.toFixed(6)},${lon.toFixed(6)}`).join(';'))}`

/** What is read of a lay from elevation and roads: heights along its way, none where there is no elevation, and where pumpers can stand. */
export type LayPlaces = { readonly points: readonly ProfileHeight[]; readonly stands_ft?: readonly number[] }

/** Heights a bundle carries for a lay as it lies now. */
export function findLayHeights(bundle: Pick<Bundle, 'district' | 'layHeights'>, lay: Lay): LayPlaces | undefined {
  if (!bundle.layHeights) return undefined
  const key = layHeightsKey(bundle.district, lay)
  return bundle.layHeights.find((kept) => kept.key === key)
}
