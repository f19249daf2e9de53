import type { Bundle, GroundHeights, Lay } from '../../plan'
import { shortHash } from '../legs'

/** Key of the ground under a lay: its way and the elevation it was read from. Heights under another key are stale and never used. */
export const layHeightsKey = ({ terrain }: Pick<Bundle['district'], 'terrain'>, { points }: Pick<Lay, 'points'>): string =>
  `${terrain?.hash.slice(0, 16) ?? ''}>${points.length}>${shortHash(points.map(({ lat, lon }) => `${lat.toFixed(6)},${lon.toFixed(6)}`).join(';'))}`

/** Heights a bundle carries for a lay as it lies now. */
export function findLayHeights(bundle: Pick<Bundle, 'district' | 'layHeights'>, lay: Lay): GroundHeights['points'] | undefined {
  if (!bundle.layHeights) return undefined
  const key = layHeightsKey(bundle.district, lay)
  return bundle.layHeights.find((kept) => kept.key === key)?.points
}
