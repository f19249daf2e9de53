import { osmFault } from './osm-fault'
import type { OsmLimits } from './osm-limits'

/** Unpacks bytes to at most `maxBytes`; throws or rejects on damaged data and on more than that. */
export type Unpack = (bytes: Uint8Array, maxBytes: number) => Promise<Uint8Array> | Uint8Array

export type ReadOptions = {
  /** zlib streams inside `.osm.pbf` */
  readonly inflate: Unpack
  /** `.gz` around any kind */
  readonly gunzip: Unpack
  /** Share done, 0 to 1. May return a promise, which is awaited: the place to let messages through. */
  readonly onProgress?: (doneShare: number) => void | Promise<void>
  readonly signal?: { readonly aborted: boolean }
  readonly limits?: Partial<OsmLimits>
}

/** What every reader needs: limits filled in, progress that also notices an abort. */
export type ReadContext = {
  readonly inflate: Unpack
  readonly limits: OsmLimits
  /** @throws OsmFault `osm-aborted` */
  readonly report: (doneShare: number) => Promise<void>
}

/** What a reader of any format works with: how to unpack, what is too much, and whom to tell how far it is. */
export function readContextOf(options: ReadOptions, limits: OsmLimits): ReadContext {
  return {
    inflate: options.inflate,
    limits,
    async report(doneShare) {
      await options.onProgress?.(doneShare)
      if (options.signal?.aborted) throw osmFault('osm-aborted')
    },
  }
}
