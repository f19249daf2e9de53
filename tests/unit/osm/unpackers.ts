import { gunzipSync, inflateSync } from 'node:zlib'

/** Unpacking by Node's own zlib, bounded. */
export const unpackers = {
  inflate: (bytes: Uint8Array, maxOutputLength: number): Uint8Array => new Uint8Array(inflateSync(bytes, { maxOutputLength })),
  gunzip: (bytes: Uint8Array, maxOutputLength: number): Uint8Array => new Uint8Array(gunzipSync(bytes, { maxOutputLength })),
}
