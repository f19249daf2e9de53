import { create, type Font } from 'fontkit'
import PDFDocument from 'pdfkit'
import type { Measure } from '../page/measure'
import type { Weight } from '../page/marks'

/** The typeface's files, as they ship. */
export type TypeFiles = Readonly<Record<Weight, Uint8Array>>

/** Written in another way where the typeface has no such sign. */
const others: Readonly<Record<string, string>> = { '′': '’', '″': '”', '→': '–', '←': '–', '↔': '–', '\u202f': '\u00a0', '\u2009': ' ', '\t': ' ', '‑': '-', '‐': '-' }
/** Stands for what it cannot write at all. */
const UNKNOWN = '?'
/** Figures of one width, so that columns of them align. */
export const FEATURES = ['tnum', 'kern'] as const

/** A document that is not laid out yet, with the typeface in it; layout measures by it and it is written into at the end. */
export function startDocument(files: TypeFiles, info: { readonly title: string; readonly date: Date }): { document: PDFDocument; measure: Measure } {
  const document = new PDFDocument({ autoFirstPage: false, font: null, compress: true, lang: 'en-US', displayTitle: true, info: { Title: info.title, CreationDate: info.date, ModDate: info.date } })
  const fonts: Readonly<Record<Weight, Font>> = { regular: create(files.regular), bold: create(files.bold) }
  document.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold)
  const known = new Set(fonts.regular.characterSet)
  const widths = new Map<string, number>()
  const unwritten = new Set<string>()
  return {
    document,
    measure: {
      unwritten,
      across(text, size, weight) {
        const key = `${weight} ${text}`
        let unit = widths.get(key)
        if (unit === undefined) {
          unit = document.font(weight).fontSize(100).widthOfString(text, { features: FEATURES }) / 100
          widths.set(key, unit)
        }
        return unit * size
      },
      clean: (text) => Array.from(text.normalize('NFC'), (sign) => {
        const point = sign.codePointAt(0) ?? 0
        if (sign === '\n' || known.has(point)) return sign
        if (others[sign] === undefined) unwritten.add(sign)
        return others[sign] ?? UNKNOWN
      }).join(''),
    },
  }
}
