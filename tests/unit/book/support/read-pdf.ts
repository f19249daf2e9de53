import { createRequire } from 'node:module'
import { getDocument, GlobalWorkerOptions } from 'pdfjs-dist/legacy/build/pdf.mjs'

GlobalWorkerOptions.workerSrc = createRequire(import.meta.url).resolve('pdfjs-dist/legacy/build/pdf.worker.mjs')

/** A piece of text as a reader of the file finds it: its corners, y upwards from the foot of the page. */
export type ReadText = { text: string; corners: [number, number][]; isLevel: boolean }
export type ReadPage = { across: number; down: number; texts: ReadText[]; /** All of it in the order it was written, spaces made plain. */ all: string }

const CAP_SHARE = 0.68
const DROP_SHARE = 0.2

/** The pages of a PDF by a reader of others (pdf.js). */
export async function readPdf(bytes: Uint8Array): Promise<{ pages: ReadPage[]; fonts: Set<string> }> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 })
  const file = await task.promise
  const pages: ReadPage[] = []
  const fonts = new Set<string>()
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items, styles } = await page.getTextContent()
    for (const { fontFamily } of Object.values(styles)) fonts.add(fontFamily)
    const texts = items.flatMap((item): ReadText[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [a, b, , , x, y] = item.transform as number[]
      const size = Math.hypot(a ?? 0, b ?? 0)
      const [cos, sin] = [(a ?? 0) / size, (b ?? 0) / size]
      const at = (along: number, up: number): [number, number] => [(x ?? 0) + along * cos - up * sin, (y ?? 0) + along * sin + up * cos]
      return [{ text: item.str, isLevel: Math.abs(sin) < 1e-6, corners: [at(0, -DROP_SHARE * size), at(item.width, -DROP_SHARE * size), at(item.width, CAP_SHARE * size), at(0, CAP_SHARE * size)] }]
    })
    pages.push({ across: width, down: height, texts, all: items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('').replaceAll('\u00a0', ' ').replaceAll('\n', ' ') })
  }
  await task.destroy()
  return { pages, fonts }
}

/** Boxes turned any way lie on each other by more than so much in every direction (separating axes). */
export function overlap(a: ReadText, b: ReadText, least = 0.8): boolean {
  for (const { corners } of [a, b]) for (const i of [0, 1]) {
    const from = corners[i], to = corners[i + 1]
    if (!from || !to) continue
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const axis = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const
    const reach = (one: ReadText) => one.corners.map(([x, y]) => x * axis[0] + y * axis[1])
    const [p, q] = [reach(a), reach(b)]
    if (Math.min(Math.max(...p), Math.max(...q)) - Math.max(Math.min(...p), Math.min(...q)) < least) return false
  }
  return true
}
