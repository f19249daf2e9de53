import { issue, type Issue } from '@/lib/issue'
import { isHgtName } from '@/lib/terrain'
import type { ElevationFile } from './elevation-file'

/** Unpacked, all elevation of one file together; more than this a page cannot hold without trouble. */
const MOST_UNPACKED_BYTES = 512 * 1024 * 1024

/**
 * The elevation files in a packed one: tiles are mostly handed out as `.hgt.zip`, models as zipped GeoTIFF.
 *
 * @returns them by their own names, or the issue: damaged, too large unpacked, or none inside
 */
export async function unpackZip({ blob }: ElevationFile): Promise<ElevationFile[] | Issue> {
  // It comes when a packed file is there.
  const { unzipSync } = await import('fflate')
  let unpacked_bytes = 0
  let entries: Record<string, Uint8Array>
  try {
    entries = unzipSync(new Uint8Array(await blob.arrayBuffer()), {
      filter: ({ name, originalSize }) => {
        if (!isElevationName(name)) return false
        unpacked_bytes += originalSize
        return unpacked_bytes <= MOST_UNPACKED_BYTES
      },
    })
  } catch {
    return issue('elevation-damaged', 'block', [], { reason: 'zip' })
  }
  if (unpacked_bytes > MOST_UNPACKED_BYTES) return issue('elevation-zip-large', 'block', [], { byteCount: unpacked_bytes })
  const files = Object.entries(entries).map(([name, bytes]) => ({ name: baseOf(name), blob: new Blob([new Uint8Array(bytes)]) }))
  return files.length > 0 ? files : issue('elevation-zip-without', 'block')
}

const baseOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1)

/** Some packers put a shadow of each file beside it, named with a dot in front. */
function isElevationName(path: string): boolean {
  const name = baseOf(path)
  return !name.startsWith('.') && (isHgtName(name) || /\.tiff?$/i.test(name))
}
