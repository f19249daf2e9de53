import type { NetworkState } from '@/scripts/house/network/network.mjs'
import { listDocuments } from '../documents'
import type { Database } from '../open-database'
import { listGrants, type Grant } from './grants'
import { findNetworkState } from './network'

export type Devices = {
  /** null where nothing can serve other devices. */
  network: NetworkState | null
  /** Public names where a proxy in front serves the network; else empty. */
  hosted: string[]
  districts: { id: string; name: string }[]
  grants: Grant[]
}

/** What the page about other devices shows. */
export async function loadDevices(database: Database): Promise<Devices> {
  const districts = await listDocuments(database, { kind: 'district' })
  const names = (process.env.MILLRACE_NAMES ?? '').split(',').map((name) => name.trim()).filter(Boolean)
  return {
    network: findNetworkState() ?? null,
    hosted: process.env.MILLRACE_HOSTED === '1' ? names : [],
    districts: districts.map(({ id, name }) => ({ id, name })),
    grants: await listGrants(database),
  }
}
