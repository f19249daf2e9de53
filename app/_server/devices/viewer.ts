import type { Database } from '../open-database'
import { findGrant, type Grant } from './grants'
import { wayOf } from './way'

/** Who asks: the station itself, a device with a grant, or one without. */
export type Viewer = { kind: 'station' } | { kind: 'device'; grant: Grant } | { kind: 'nobody' }

/** @param open the database, asked for only when a device has to be looked up */
export async function findViewer(headers: Headers, open: () => Promise<Database>): Promise<Viewer> {
  if (wayOf(headers).kind === 'station') return { kind: 'station' }
  const cookies = headers.get('cookie')
  const grant = cookies ? await findGrant(await open(), cookies) : undefined
  return grant ? { kind: 'device', grant } : { kind: 'nobody' }
}
