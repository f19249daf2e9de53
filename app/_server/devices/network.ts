import type { Network, NetworkState } from '@/scripts/house/network/network.mjs'
import type { Database } from '../open-database'
import { refusal } from '../refusal'

const SETTING = 'network'

// Put on the global object by the server that this module runs in.
const held = globalThis as typeof globalThis & { millraceNetwork?: Network }

/** How other devices are served; undefined where nothing can serve them, as in development. */
export const findNetworkState = (): NetworkState | undefined => held.millraceNetwork?.state()

/** True for a name or address under which other devices find this machine. */
export const isNetworkHost = (host: string): boolean => held.millraceNetwork?.isKnown(host) ?? false

/** Turns it on or off now, and for the next start. */
export async function setNetwork(database: Database, isOn: boolean): Promise<NetworkState> {
  if (!held.millraceNetwork) throw refusal('no-network')
  const value = isOn ? 'on' : 'off'
  await database.setting.upsert({ where: { key: SETTING }, create: { key: SETTING, value }, update: { value } })
  await held.millraceNetwork.setOn(isOn)
  return held.millraceNetwork.state()
}
