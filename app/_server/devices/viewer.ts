import type { DistrictScope, SeatScope } from '../../_devices/scope'
import type { Database } from '../open-database'
import type { Grant } from '../../_devices/devices'
import { findGrant, findSeatGrant } from './grants'
import { wayOf } from './way'

/** Who asks: the station itself, a device with a grant of a district, one at a seat of an exercise, or one without. */
export type Viewer = { kind: 'station' } | { kind: 'device'; grant: Grant<DistrictScope> } | { kind: 'seat'; grant: Grant<SeatScope> } | { kind: 'nobody' }

/** True for the one page and the part of the API that are for seats. Everywhere else a seat's grant is not even looked for. */
export const isSeatPath = (path: string): boolean => path === '/seat' || path.startsWith('/api/seat/')

/**
 * @param open the database, asked for only when a device has to be looked up
 * @param path what is asked for; a seat's grant counts at seats alone, a district's everywhere else alone
 */
export async function findViewer(headers: Headers, open: () => Promise<Database>, path = '/'): Promise<Viewer> {
  const cookies = headers.get('cookie')
  if (isSeatPath(path)) {
    const seat = cookies ? await findSeatGrant(await open(), cookies) : undefined
    if (seat) return { kind: 'seat', grant: seat }
    return wayOf(headers).kind === 'station' ? { kind: 'station' } : { kind: 'nobody' }
  }
  if (wayOf(headers).kind === 'station') return { kind: 'station' }
  const grant = cookies ? await findGrant(await open(), cookies) : undefined
  return grant ? { kind: 'device', grant } : { kind: 'nobody' }
}
