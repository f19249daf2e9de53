import { SaxesParser } from 'saxes'
import { decodeText } from './decode-text'
import { exchangeFault } from './exchange-fault'
import { exchangeLimits } from './exchange-limits'
import type { Report } from './read-report'

/** An element with all that is in it; names without their prefix. */
export type XmlElement = { readonly name: string; readonly attributes: Readonly<Record<string, string>>; readonly children: XmlElement[]; text: string; readonly line: number }

export type XmlWalk = {
  /** Name that the outermost element must have. */
  readonly root: string
  /** Elements that are gathered whole; all else is passed through. */
  readonly records: ReadonlySet<string>
  /** `around`: the elements it lies in, outermost first, each with the number it was opened under. */
  onRecord(element: XmlElement, around: readonly { readonly name: string; readonly count: number }[]): void
}

const CHUNK_CHARS = 1 << 18
const localName = (name: string): string => name.slice(name.indexOf(':') + 1)

/**
 * Goes through an XML document in pieces. Declarations of entities are refused unread, so that none can be expanded.
 *
 * @throws ExchangeFault `exchange-not-xml` with its line, `exchange-entities`, `exchange-wrong-root`, `exchange-too-deep`
 */
export async function walkXml(bytes: Uint8Array, { root, records, onRecord }: XmlWalk, report: Report): Promise<void> {
  const { text } = decodeText(bytes, { mayGuess: false })
  const parser = new SaxesParser({ position: true, xmlns: false })
  const around: { name: string; count: number }[] = []
  const open: XmlElement[] = []
  let openedCount = 0
  parser.on('error', (error) => { throw exchangeFault('exchange-not-xml', { line: parser.line, reason: plainReason(error.message) }) })
  parser.on('doctype', (declared) => { if (/<!ENTITY/i.test(declared)) throw exchangeFault('exchange-entities', { line: parser.line }) })
  parser.on('opentag', ({ name: whole, attributes }) => {
    const name = localName(whole)
    if (around.length + open.length >= exchangeLimits.maxDepth) throw exchangeFault('exchange-too-deep', { limit: exchangeLimits.maxDepth })
    if (around.length === 0 && name !== root) throw exchangeFault('exchange-wrong-root', { found: whole.slice(0, 40), wanted: root })
    const inside = open.at(-1)
    if (inside || records.has(name)) {
      const element: XmlElement = { name, attributes, children: [], text: '', line: parser.line }
      inside?.children.push(element)
      open.push(element)
    } else around.push({ name, count: ++openedCount })
  })
  const take = (piece: string): void => { const inside = open.at(-1); if (inside) inside.text += piece }
  parser.on('text', take)
  parser.on('cdata', take)
  parser.on('closetag', () => {
    const ended = open.pop()
    if (!ended) around.pop()
    else if (open.length === 0) onRecord(ended, around)
  })
  for (let at = 0; at < text.length; at += CHUNK_CHARS) {
    await report(at / text.length)
    parser.write(text.slice(at, at + CHUNK_CHARS))
  }
  parser.close()
}

/** The parser's sentence without the place it puts before it. */
const plainReason = (message: string): string => message.replace(/^\d+:\d+: /, '').slice(0, 120)

export const childOf = (element: XmlElement, name: string): XmlElement | undefined => element.children.find((child) => child.name === name)
export const childText = (element: XmlElement, name: string): string | undefined => childOf(element, name)?.text.trim()
