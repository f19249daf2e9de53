import { exchangeFault } from './exchange-fault'

export type DecodedText = {
  readonly text: string
  /** Encoding that was guessed because the bytes are not UTF-8: accents want a look. */
  readonly guessed?: string
}

const startsWith = (bytes: Uint8Array, ...start: readonly number[]): boolean => start.every((byte, i) => bytes[i] === byte)

/** Encoding that the first bytes state, by their mark or by an XML declaration; undefined when they state none. */
function statedEncoding(bytes: Uint8Array): string | undefined {
  if (startsWith(bytes, 0xef, 0xbb, 0xbf)) return 'utf-8'
  if (startsWith(bytes, 0xff, 0xfe)) return 'utf-16le'
  if (startsWith(bytes, 0xfe, 0xff)) return 'utf-16be'
  const head = String.fromCharCode(...bytes.subarray(0, 200))
  return /^\s*<\?xml[^>]*\bencoding\s*=\s*["']([\w.:-]+)["']/.exec(head)?.[1]
}

/**
 * Text of a file. What states no encoding is UTF-8; a table that is not may be Windows-1252, as spreadsheets write it.
 *
 * @throws ExchangeFault `exchange-encoding` when the encoding is not known, or the bytes are not in it
 */
export function decodeText(bytes: Uint8Array, { mayGuess }: { mayGuess: boolean }): DecodedText {
  const stated = statedEncoding(bytes)
  try {
    return { text: new TextDecoder(stated ?? 'utf-8', { fatal: true }).decode(bytes) }
  } catch {
    if (stated !== undefined || !mayGuess) throw exchangeFault('exchange-encoding', { encoding: stated ?? 'UTF-8' })
  }
  return { text: new TextDecoder('windows-1252').decode(bytes), guessed: 'Windows-1252' }
}
