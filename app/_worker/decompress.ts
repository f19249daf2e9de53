/** Unpacks a whole stream to at most `maxBytes`; more than that, or damaged data, rejects. */
async function unpackBounded(bytes: Uint8Array, format: 'deflate' | 'gzip', maxBytes: number): Promise<Uint8Array> {
  const source = new Blob([new Uint8Array(bytes)]).stream().pipeThrough(new DecompressionStream(format))
  const reader = source.getReader()
  const chunks: Uint8Array[] = []
  let length = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    length += value.length
    if (length > maxBytes) {
      await reader.cancel()
      throw new RangeError(`more than ${maxBytes} bytes when unpacked`)
    }
    chunks.push(value)
  }
  const whole = new Uint8Array(length)
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}

/** zlib streams, in browsers, workers and Node alike. */
export const inflate = (bytes: Uint8Array, maxBytes: number): Promise<Uint8Array> => unpackBounded(bytes, 'deflate', maxBytes)

/** gzip files, in browsers, workers and Node alike. */
export const gunzip = (bytes: Uint8Array, maxBytes: number): Promise<Uint8Array> => unpackBounded(bytes, 'gzip', maxBytes)
