import { refusal } from './refusal'

const BYTES_PER_MB = 1024 * 1024

function requireType(request: Request, expected: string): void {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase()
  if (type !== expected) throw refusal('wrong-content-type', { expected })
}

/** How far beyond the limit a body is still taken in and thrown away, so that its sender can hear why. */
const HEARD_OUT_SHARE = 1

/**
 * The bytes of a request, counted as they arrive: what the request says of its own length is not
 * trusted, and nothing beyond the limit is kept.
 *
 * @throws Refusal for another content type or too many bytes
 */
export async function readBytes(request: Request, expected: string, limit_MB: number): Promise<Uint8Array<ArrayBuffer>> {
  requireType(request, expected)
  const limit = limit_MB * BYTES_PER_MB
  const most = limit * (1 + HEARD_OUT_SHARE)
  if (Number(request.headers.get('content-length') ?? 0) > most) throw refusal('too-large', { limit_MB })
  let parts: Uint8Array[] = []
  let size = 0
  const reader = request.body?.getReader()
  while (reader) {
    const { done, value } = await reader.read()
    if (done) break
    size += value.byteLength
    if (size <= limit) parts.push(value)
    else parts = []
    if (size > most) {
      await reader.cancel()
      break
    }
  }
  if (size > limit) throw refusal('too-large', { limit_MB })
  const bytes = new Uint8Array(size)
  let at = 0
  for (const part of parts) {
    bytes.set(part, at)
    at += part.byteLength
  }
  return bytes
}

/** The request's JSON, within the limit and in UTF-8. */
export async function readJson(request: Request, limit_MB: number): Promise<unknown> {
  const bytes = await readBytes(request, 'application/json', limit_MB)
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) as unknown
  } catch {
    throw refusal('not-json')
  }
}
