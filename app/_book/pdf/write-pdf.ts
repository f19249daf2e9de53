import type PDFDocument from 'pdfkit'
import { toBytes } from 'pdfkit/output'
import { inks, type Mark, type PageMarks, type ShapeMark, type TextMark } from '../page/marks'
import { FEATURES } from './type'

/** A page with the name other pages lead to it by, and its line in the reader's list of pages. */
export type WrittenPage = PageMarks & { readonly name?: string; readonly title?: string }

/**
 * Writes pages into a document begun by `startDocument`, and closes it.
 *
 * @param onPage called after each page with how many are done; may wait, so that others get a turn
 * @returns the file's bytes
 */
export async function writePdf(document: PDFDocument, pages: readonly WrittenPage[], onPage: (done: number) => Promise<void> | void = () => undefined): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = toBytes(document)
  for (const [index, page] of pages.entries()) {
    document.addPage({ size: [page.across, page.down], margin: 0 })
    if (page.name !== undefined) document.addNamedDestination(page.name)
    if (page.title !== undefined) document.outline.addItem(page.title)
    for (const mark of page.marks) write(document, mark)
    await onPage(index + 1)
  }
  document.end()
  return bytes
}

function write(document: PDFDocument, mark: Mark): void {
  if (mark.kind === 'text') writeText(document, mark)
  else if (mark.kind === 'shape') writeShape(document, mark)
  else document.goTo(mark.left, mark.top, mark.across, mark.down, mark.to)
}

function writeText(document: PDFDocument, { x, y, text, size, weight, ink, angle }: TextMark): void {
  document.font(weight).fontSize(size).fillColor(inks[ink])
  if (angle !== undefined) document.save().rotate((angle * 180) / Math.PI, { origin: [x, y] })
  document.text(text, x, y, { lineBreak: false, baseline: 'alphabetic', features: FEATURES })
  if (angle !== undefined) document.restore()
}

function writeShape(document: PDFDocument, { path, fill, stroke, width = 1, dash, isRound, opacity, at }: ShapeMark): void {
  document.save()
  if (at) document.translate(at.x, at.y).scale(at.scale)
  document.lineWidth(width).lineJoin(isRound ? 'round' : 'miter').lineCap(isRound ? 'round' : 'butt')
  if (dash && dash.length > 0) document.dash(dash)
  if (opacity !== undefined) document.fillOpacity(opacity)
  document.path(path)
  if (fill && stroke) document.fillAndStroke(inks[fill], inks[stroke], 'even-odd')
  else if (fill) document.fill(inks[fill], 'even-odd')
  else if (stroke) document.stroke(inks[stroke])
  document.restore()
}
