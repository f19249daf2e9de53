/**
 * An id that is always the same for the same text, in the form of a version 8 UUID (RFC 9562, section 5.8: made by a rule of
 * one's own). It tells rows apart, and guards nothing.
 *
 * @param text what the id stands for
 */
export function idFromText(text: string): string {
  const words = [0x811c9dc5, 0x9e3779b9, 0x85ebca6b, 0xc2b2ae35].map((seed, i) => hash(text, seed + i * 0x01000193))
  const hex = words.map((word) => word.toString(16).padStart(8, '0')).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`
}

/** FNV-1a from a start of its own, with the bits stirred at the end. */
function hash(text: string, seed: number): number {
  let h = seed >>> 0
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193)
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d)
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b)
  return (h ^ (h >>> 16)) >>> 0
}
