import type { SiteKind } from '@/app/_look/site-shapes'
import { say } from '@/app/_text'
import '@/app/_text/areas/book'
import { drawSymbol } from '../draw/symbol'
import type { Block } from '../page/block'
import { flow, type Room } from '../page/flow'
import { FOOT_HEIGHT, MARGIN } from '../page/paper'
import { Page } from '../page/page'
import { widthOf, type BookKit } from './kit'

export type SheetHead = { readonly what: string; readonly title: string; readonly symbol?: SiteKind }

/** A sheet being set: its pages so far, and what is free on the last. */
export type OpenSheet = { readonly pages: Page[]; room: Room; add(blocks: readonly Block[]): void; /** Free on this page. */ left(): number; turn(): void }

const TITLE = 19
const SYMBOL = 26

/** Begins a sheet: its name is at the head of every page of it. */
export function openSheet(kit: BookKit, head: SheetHead): OpenSheet {
  const across = widthOf(kit.paper)
  const pages: Page[] = []
  const begin = (): Room => {
    const page = new Page(kit.paper, kit.measure)
    const isFirst = pages.length === 0
    pages.push(page)
    const indent = head.symbol ? SYMBOL + 8 : 0
    let y: number = MARGIN.top
    if (head.symbol) drawSymbol(page, head.symbol, MARGIN.left + SYMBOL / 2, y + SYMBOL / 2 + 2, isFirst ? SYMBOL : 18)
    y += page.text(say(isFirst ? 'book.head' : 'book.head.more', { what: head.what, district: kit.district.name }), MARGIN.left + indent, y, across - indent, { size: 8.5, weight: 'bold', ink: 'quiet' })
    y += page.text(head.title, MARGIN.left + indent, y, across - indent, { size: isFirst ? TITLE : 12, weight: 'bold' })
    y = Math.max(y + 4, MARGIN.top + (isFirst ? SYMBOL + 6 : 26))
    page.rule(MARGIN.left, MARGIN.left + across, y, 2, 'ink')
    return { page, left: MARGIN.left, across, top: y + 7, bottom: page.down - MARGIN.bottom - FOOT_HEIGHT }
  }
  const sheet: OpenSheet = {
    pages, room: begin(),
    add: (blocks) => { sheet.room = flow(blocks, sheet.room, begin) },
    left: () => sheet.room.bottom - sheet.room.top,
    turn: () => { sheet.room = begin() },
  }
  return sheet
}

/** The lines at the foot of every page: what it is, who decides, how old the data is, which page of how many. */
export function drawFoot(page: Page, kit: BookKit, { title, number, count }: { readonly title: string; readonly number: number; readonly count: number }): void {
  const right = page.across - MARGIN.right
  const y = page.down - MARGIN.bottom - FOOT_HEIGHT + 7
  page.rule(MARGIN.left, right, y, 0.8, 'ink')
  const size = 7.2
  const pageText = say('book.foot.page', { number, count })
  const pageAcross = kit.measure.across(kit.measure.clean(pageText), 8.5, 'bold') + 12
  page.line(pageText, right, y + 3.5, { size: 8.5, weight: 'bold' }, 'right')
  page.line(oneLine(kit, title, right - MARGIN.left - pageAcross, size), MARGIN.left, y + 4, { size, weight: 'bold' })
  page.line(oneLine(kit, say('book.foot.defer'), right - MARGIN.left - pageAcross, size), MARGIN.left, y + 13, { size })
  page.line(oneLine(kit, dataLine(kit), right - MARGIN.left, size), MARGIN.left, y + 22, { size, ink: 'quiet' })
}

/** What a foot has no room for ends in an ellipsis: its whole stands at the head of the page. */
function oneLine({ measure }: BookKit, text: string, across: number, size: number): string {
  const clean = measure.clean(text)
  if (measure.across(clean, size, 'bold') <= across) return clean
  let end = clean.length - 1
  while (end > 1 && measure.across(`${clean.slice(0, end)}…`, size, 'bold') > across) end--
  return `${clean.slice(0, end)}…`
}

/** When it was printed, and which roads and map it stands on. */
export function dataLine({ district, day }: Pick<BookKit, 'district' | 'day'>): string {
  const { roads, map } = district
  const printed = say('shell.printed-on', { day: dayWords(day) })
  const of = roads ?? map
  return of ? `${printed} ${say('book.foot.data', { name: of.name, day: dayWords(of.dataDate ?? of.importedOn), hash: of.hash.slice(0, 8), attribution: of.attribution })}` : `${printed} ${say('book.foot.no-data')}`
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as const

/** A day with its month in letters, read alike everywhere: "4 Mar 2026"; the text itself where it is no day. */
export function dayWords(iso: string): string {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso) ?? []
  const name = months[Number(month) - 1]
  return year !== undefined && name !== undefined ? say('book.day', { year, month: say(`book.month.${name}`), date: String(Number(date)) }) : iso
}
