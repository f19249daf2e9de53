/**
 * Packs and unpacks named number arrays and texts in one binary blob: a magic word, a
 * version, a checksum of all that follows, then sections in a fixed order, each aligned
 * to eight bytes. Little-endian, as every machine that runs this is.
 */
export type SectionKind = 'u8' | 'u32' | 'i32' | 'f32' | 'f64'

type ArrayOf = {
  u8: Uint8Array<ArrayBuffer>
  u32: Uint32Array<ArrayBuffer>
  i32: Int32Array<ArrayBuffer>
  f32: Float32Array<ArrayBuffer>
  f64: Float64Array<ArrayBuffer>
}

/** Arrays by name, in the order and of the kind a layout states. */
export type Sections<L extends Layout> = { readonly [K in keyof L]: ArrayOf[L[K]] }
export type Layout = Readonly<Record<string, SectionKind>>

const bytesOf: Readonly<Record<SectionKind, number>> = { u8: 1, u32: 4, i32: 4, f32: 4, f64: 8 }
const HEADER_BYTES = 16
const aligned = (bytes: number): number => Math.ceil(bytes / 8) * 8

/** FNV-1a over 32-bit words (the constants are public domain): any change of one byte changes it. */
function checksumOf(bytes: Uint8Array): number {
  let hash = 0x811c9dc5
  const whole = bytes.length & ~3
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let i = 0; i < whole; i += 4) hash = Math.imul(hash ^ view.getUint32(i, true), 0x01000193)
  for (let i = whole; i < bytes.length; i++) hash = Math.imul(hash ^ (bytes[i] ?? 0), 0x01000193)
  hash ^= hash >>> 15
  return hash >>> 0
}

/** @param magic four ASCII characters */
export function packBlob<L extends Layout>(magic: string, version: number, layout: L, sections: Sections<L>): Uint8Array<ArrayBuffer> {
  const names = Object.keys(layout)
  const total = names.reduce((sum, name) => sum + 8 + aligned(sections[name]?.byteLength ?? 0), HEADER_BYTES)
  const blob = new Uint8Array(total)
  const view = new DataView(blob.buffer)
  for (let i = 0; i < 4; i++) blob[i] = magic.charCodeAt(i)
  view.setUint32(4, version, true)
  let at = HEADER_BYTES
  for (const name of names) {
    const section = sections[name]
    if (!section) throw new RangeError(`section ${name} is absent, must be given`)
    view.setUint32(at, section.length, true)
    blob.set(new Uint8Array(section.buffer, section.byteOffset, section.byteLength), at + 8)
    at += 8 + aligned(section.byteLength)
  }
  view.setUint32(8, total, true)
  view.setUint32(12, checksumOf(blob.subarray(HEADER_BYTES)), true)
  return blob
}

/** Why a blob was not taken. */
export type BlobRefusal = 'not-ours' | 'newer-version' | 'older-version' | 'damaged'

/** @returns the arrays, copied out of the blob, or why not; never throws */
export function unpackBlob<L extends Layout>(magic: string, version: number, layout: L, blob: Uint8Array): Sections<L> | BlobRefusal {
  if (blob.length < HEADER_BYTES || [0, 1, 2, 3].some((i) => blob[i] !== magic.charCodeAt(i))) return 'not-ours'
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength)
  const found = view.getUint32(4, true)
  if (found !== version) return found > version ? 'newer-version' : 'older-version'
  if (view.getUint32(8, true) !== blob.length) return 'damaged'
  if (view.getUint32(12, true) !== checksumOf(blob.subarray(HEADER_BYTES))) return 'damaged'
  const sections: Record<string, ArrayOf[SectionKind]> = {}
  let at = HEADER_BYTES
  for (const [name, kind] of Object.entries(layout)) {
    if (at + 8 > blob.length) return 'damaged'
    const length = view.getUint32(at, true)
    const byteLength = length * bytesOf[kind]
    if (at + 8 + aligned(byteLength) > blob.length) return 'damaged'
    sections[name] = arrayFrom(kind, blob.slice(at + 8, at + 8 + byteLength).buffer)
    at += 8 + aligned(byteLength)
  }
  if (at !== blob.length) return 'damaged'
  return sections as Sections<L>
}

function arrayFrom(kind: SectionKind, buffer: ArrayBuffer): ArrayOf[SectionKind] {
  switch (kind) {
    case 'u8': return new Uint8Array(buffer)
    case 'u32': return new Uint32Array(buffer)
    case 'i32': return new Int32Array(buffer)
    case 'f32': return new Float32Array(buffer)
    case 'f64': return new Float64Array(buffer)
  }
}

/** Texts as one run of UTF-8, each ended by a zero byte. */
export function bytesFromTexts(texts: readonly string[]): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(texts.map((text) => text.replaceAll('\0', ' ') + '\0').join(''))
}

/** @returns the texts, or undefined if the bytes are not texts ended by zeros */
export function findTextsIn(bytes: Uint8Array): string[] | undefined {
  if (bytes.length === 0) return []
  if (bytes[bytes.length - 1] !== 0) return undefined
  const texts = new TextDecoder('utf-8').decode(bytes).split('\0')
  texts.pop()
  return texts
}

/** Numbers texts in the order they are first met; index 0 is always the empty text. */
export class TextPool {
  readonly texts: string[] = ['']
  private readonly indexOf = new Map<string, number>([['', 0]])

  indexFor(text: string | undefined): number {
    if (text === undefined) return 0
    const known = this.indexOf.get(text)
    if (known !== undefined) return known
    this.indexOf.set(text, this.texts.length)
    return this.texts.push(text) - 1
  }
}
