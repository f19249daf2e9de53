/** What the first bytes say a file is. */
export type FoundKind =
  | { readonly kind: 'pbf' | 'xml' | 'json' | 'gzip' }
  /** A format that is known and not read. */
  | { readonly kind: 'other'; readonly format: string }
  | { readonly kind: 'unknown' }

const startsWith = (bytes: Uint8Array, ...start: readonly number[]): boolean => start.every((byte, i) => bytes[i] === byte)

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to))

/** Kind of a file by its first bytes, never by its name. */
export function fileKindOf(bytes: Uint8Array): FoundKind {
  if (startsWith(bytes, 0x1f, 0x8b)) return { kind: 'gzip' }
  if (startsWith(bytes, 0x42, 0x5a, 0x68)) return { kind: 'other', format: 'bzip2' }
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) return { kind: 'other', format: 'zip' }
  if (startsWith(bytes, 0xfd, 0x37, 0x7a, 0x58, 0x5a)) return { kind: 'other', format: 'xz' }
  if (startsWith(bytes, 0x28, 0xb5, 0x2f, 0xfd)) return { kind: 'other', format: 'zstandard' }
  if (startsWith(bytes, 0xff, 0xe0, 0x04, 0x6f, 0x35)) return { kind: 'other', format: 'o5m' }
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46)) return { kind: 'other', format: 'pdf' }
  // A block header is short, and names itself within its first bytes.
  if (startsWith(bytes, 0, 0) && ascii(bytes, 4, 40).includes('OSMHeader')) return { kind: 'pbf' }
  let at = startsWith(bytes, 0xef, 0xbb, 0xbf) ? 3 : 0
  while (at < bytes.length && at < 4096 && [0x20, 0x09, 0x0a, 0x0d].includes(bytes[at] ?? 0)) at++
  if (bytes[at] === 0x3c) return { kind: 'xml' }
  if (bytes[at] === 0x7b || bytes[at] === 0x5b) return { kind: 'json' }
  return { kind: 'unknown' }
}
