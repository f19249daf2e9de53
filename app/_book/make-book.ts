import type { SheetRef } from '@/lib/book'
import { say } from '@/app/_text'
import '@/app/_text/areas/book'
import type { WrittenPage } from './pdf/write-pdf'
import { draftSiteSheet } from './sheets/draft-site-sheet'
import { drawFoot } from './sheets/frame'
import { contentsSheet, coverSheet, indexMapSheet } from './sheets/front-matter'
import { hazardSheet } from './sheets/hazard-sheet'
import type { BookKit, MadeSheet } from './sheets/kit'
import { planSheet } from './sheets/plan-sheet'
import { dumpSheet, fillSheet } from './sheets/site-sheet'

export type BookProgress = { readonly done: number; readonly of: number; /** Name of the sheet that was set last. */ readonly title: string }

/** One sheet, set. @throws RangeError if what it is about is not in the book */
function makeSheet(kit: BookKit, ref: SheetRef): MadeSheet {
  switch (ref.kind) {
    case 'plan': return planSheet(kit, ref.planId)
    case 'fill': return fillSheet(kit, ref.planId, ref.siteId)
    case 'dump': return dumpSheet(kit, ref.planId, ref.siteId)
    case 'draft': return draftSiteSheet(kit, ref.draftSiteId)
    case 'hazard': return hazardSheet(kit, ref.hazardId)
  }
}

/**
 * Sets sheets as pages, one after the other so that others get a turn between: each with its foot, and before them, where it
 * is a book, cover, contents and index map.
 *
 * @param hasFront with cover, contents and index map
 */
export function* makeBook(kit: BookKit, refs: readonly SheetRef[], hasFront: boolean): Generator<BookProgress, WrittenPage[]> {
  const sheets: MadeSheet[] = []
  for (const ref of refs) {
    const made = makeSheet(kit, ref)
    sheets.push(made)
    yield { done: sheets.length, of: refs.length, title: made.title }
  }
  return numbered(kit, hasFront ? [...frontOf(kit, refs, sheets), ...sheets] : sheets)
}

/** The front's own length does not change with the numbers in it, so it is set once to be counted and once to stand. */
function frontOf(kit: BookKit, refs: readonly SheetRef[], sheets: readonly MadeSheet[]): MadeSheet[] {
  const front = (pageOf: (key: string) => number): MadeSheet[] => {
    const index = indexMapSheet(kit, refs, pageOf)
    return [coverSheet(kit, sheets), contentsSheet(kit, [index, ...sheets], pageOf), index]
  }
  const numbers = new Map<string, number>()
  let next = 1
  for (const { key, pages } of [...front(() => 888), ...sheets]) {
    numbers.set(key, next)
    next += pages.length
  }
  return front((key) => numbers.get(key) ?? 0)
}

function numbered(kit: BookKit, sheets: readonly MadeSheet[]): WrittenPage[] {
  const count = sheets.reduce((sum, { pages }) => sum + pages.length, 0)
  let number = 0
  return sheets.flatMap(({ key, title, what, pages }) => pages.map((page, i): WrittenPage => {
    number += 1
    const kind = what === title ? 'same' : what
    drawFoot(page, kit, { title: say('book.foot.title', { district: kit.district.name, what: kind, title, side: i + 1, sides: pages.length }), number, count })
    return { across: page.across, down: page.down, marks: page.marks, ...(i === 0 && { name: key, title: say('book.bookmark', { what: kind, title }) }) }
  }))
}
