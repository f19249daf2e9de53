import { Zip, ZipDeflate } from 'fflate'
import type { Gathered } from './gather-archive'

/** Packed at a time: other requests get their turn between two pieces. */
const PIECE_BYTES = 256 * 1024

/** The zip file of an archive, in pieces, as fast as they are taken. */
export async function* packArchive({ manifest, parts }: Gathered): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const ready: Uint8Array<ArrayBuffer>[] = []
  const zip = new Zip((error, piece) => {
    if (error) throw error
    ready.push(new Uint8Array(piece))
  })
  for await (const { name, bytes } of parts()) {
    const file = new ZipDeflate(name, { level: 6 })
    file.mtime = manifest.madeAt
    zip.add(file)
    for (let at = 0; at === 0 || at < bytes.byteLength; at += PIECE_BYTES) {
      const end = at + PIECE_BYTES
      file.push(bytes.subarray(at, end), end >= bytes.byteLength)
      yield* ready.splice(0)
      await new Promise((resolve) => setImmediate(resolve))
    }
  }
  zip.end()
  yield* ready.splice(0)
}

/** Name under which an archive is kept: the district's, the day, and an ending of its own. */
export const archiveFileName = (districtName: string, madeAt: string, ending: string): string =>
  `${districtName.replace(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replace(/\s+/g, ' ').trim().slice(0, 80) || 'district'} ${madeAt.slice(0, 10)}${ending}`
