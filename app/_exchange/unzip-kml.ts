/**
 * The KML files in a packed one (OGC 07-147r2, annex C), the outermost first.
 *
 * @throws when the packing is damaged, or they would unpack to more than `maxBytes` together
 */
export async function unzipKml(bytes: Uint8Array, maxBytes: number): Promise<readonly Uint8Array[]> {
  // It comes when a packed file is there.
  const { unzipSync } = await import('fflate')
  let unpacked_bytes = 0
  const entries = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!/\.kml$/i.test(name) || /(?:^|\/)\./.test(name)) return false
      unpacked_bytes += originalSize
      return unpacked_bytes <= maxBytes
    },
  })
  if (unpacked_bytes > maxBytes) throw new RangeError(`more than ${maxBytes} bytes when unpacked`)
  const depthOf = (name: string): number => name.split('/').length
  return Object.entries(entries).sort(([a], [b]) => depthOf(a) - depthOf(b)).map(([, inside]) => inside)
}
