import { hexOf } from './hex-of'

/**
 * A new random id. Pages served over plain http have no `crypto.randomUUID`, so the
 * version 4 UUID is then put together from random bytes (RFC 9562, section 5.4).
 */
export function mintId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID()
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80
  const hex = hexOf(bytes)
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
