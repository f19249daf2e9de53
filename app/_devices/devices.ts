import type { NetworkState } from '@/scripts/house/network/network.mjs'
import type { Scope } from './scope'

/** What a device may open, and until when. */
export type Grant<S extends Scope = Scope> = { id: string; scope: S; name: string; createdAt: string; expiresAt: string; lastSeenAt: string }

/** What the page about other devices shows. */
export type Devices = {
  /** null where nothing can serve other devices. */
  network: NetworkState | null
  /** Public names where a proxy in front serves the network; else empty. */
  hosted: string[]
  districts: { id: string; name: string }[]
  /** Exercises that devices sit in. */
  exercises: { id: string; name: string }[]
  grants: Grant[]
}
