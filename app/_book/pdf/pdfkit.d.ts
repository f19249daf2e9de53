/** What the book uses of fontkit and pdfkit, which ship no types. */
declare module 'fontkit' {
  export type Font = { readonly characterSet: readonly number[]; layout(text: string): unknown }
  export function create(bytes: Uint8Array): Font
}

declare module 'pdfkit' {
  export default class PDFDocument {
    constructor(options: { /** null: none until one is chosen */ font?: null;  size?: [number, number]; margin?: number; autoFirstPage?: boolean; compress?: boolean; lang?: string; displayTitle?: boolean; pdfVersion?: string; info?: Record<string, string | Date> })
    registerFont(name: string, source: import('fontkit').Font): this
    font(name: string): this
    fontSize(size: number): this
    widthOfString(text: string, options?: { features?: readonly string[] }): number
    addPage(options: { size: [number, number]; margin: number }): this
    save(): this
    restore(): this
    translate(x: number, y: number): this
    scale(factor: number): this
    rotate(degrees: number, options?: { origin?: [number, number] }): this
    path(path: string): this
    fill(colour?: string, rule?: 'even-odd' | 'non-zero'): this
    stroke(colour?: string): this
    fillAndStroke(fill: string, stroke: string, rule?: 'even-odd' | 'non-zero'): this
    fillColor(colour: string, opacity?: number): this
    fillOpacity(opacity: number): this
    lineWidth(width: number): this
    lineCap(cap: 'butt' | 'round'): this
    lineJoin(join: 'miter' | 'round'): this
    dash(length: number | readonly number[], options?: { space?: number }): this
    undash(): this
    text(text: string, x: number, y: number, options: { lineBreak: false; baseline: 'alphabetic'; features?: readonly string[] }): this
    goTo(x: number, y: number, across: number, down: number, name: string): this
    addNamedDestination(name: string, ...place: unknown[]): this
    readonly outline: { addItem(title: string): unknown }
    on(event: string, listener: (...given: never[]) => void): this
    off(event: string, listener: (...given: never[]) => void): this
    end(): void
  }
}

declare module 'pdfkit/output' {
  import type PDFDocument from 'pdfkit'
  export function toBytes(document: PDFDocument): Promise<Uint8Array<ArrayBuffer>>
}
