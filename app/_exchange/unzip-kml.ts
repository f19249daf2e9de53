/**
 * The KML in a packed file (OGC 07-147r2, annex C): the first that lies at the top, else the first there is.
 *
 * @throws when the packing is damaged, or it would unpack to more than `maxBytes`
 */
export async function unzipKml(bytes: Uint8Array, maxBytes: number): Promise<Uint8Array | undefined> {
  // It comes when a packed file is there.
  const { unzipSync } = await import('fflate')
  let isTooLarge = false
  const entries = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!/\.kml$/i.test(name) || /(?:^|\/)\./.test(name)) return false
      isTooLarge ||= originalSize > maxBytes
      return !isTooLarge
    },
  })
  if (isTooLarge) throw new RangeError(`more than ${maxBytes} bytes when unpacked`)
  const names = Object.keys(entries)
  const first = names.find((name) => !name.includes('/')) ?? names[0]
  return first === undefined ? undefined : entries[first]
}
