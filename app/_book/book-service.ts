import type { FindBlob } from '@/app/_worker/road-desks'
import { BundleMaker } from '@/app/_worker/whole-bundle'
import type { UnitSystem } from '@/app/_text'
import type { AnsweredPlan, SheetRef } from '@/lib/book'
import { decodeDistrictMap, type DistrictMap } from '@/lib/osm'
import type { Bundle, District, Plan } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'
import { makeBook, type BookProgress } from './make-book'
import type { Paper } from './page/paper'
import { startDocument, type TypeFiles } from './pdf/type'
import { writePdf } from './pdf/write-pdf'

/** What is to be printed, and how. */
export type BookOrder = {
  readonly district: District
  readonly plans: readonly Plan[]
  readonly answered: readonly AnsweredPlan[]
  readonly refs: readonly SheetRef[]
  readonly hasFront: boolean
  readonly paper: Paper
  readonly system: UnitSystem
  /** YYYY-MM-DD. */
  readonly day: string
  readonly title: string
}

export type MadeBook = { readonly bytes: Uint8Array<ArrayBuffer>; readonly pageCount: number; /** Signs of names that the typeface lacks; on paper they stand as `?`. */ readonly unwritten: string }
export type BookTold = BookProgress & { readonly stage: 'setting' | 'writing' }

export type BookService = {
  /** A plan with every way found, and its whole answer. */
  answer(bundle: Bundle): Promise<AnsweredPlan>
  print(order: BookOrder, onProgress: (told: BookTold) => unknown): Promise<MadeBook>
}

/** Sheets from one message to the next: few, so that the page hears how far it is. */
const PAGES_A_MESSAGE = 4

/**
 * What the book's worker does: answers plans on the district's own roads, sets the sheets and writes the file.
 *
 * @param findType the typeface's files
 * @param turn     lets messages go out between
 */
export function bookService(findBlob: FindBlob, findType: () => Promise<TypeFiles>, turn: () => Promise<void>): BookService {
  const maker = new BundleMaker(findBlob)
  return {
    async answer(asked) {
      const { bundle } = await maker.make(asked)
      return { bundle, result: evaluatePlan(bundle) }
    },
    async print({ district, plans, answered, refs, hasFront, paper, system, day, title }, onProgress) {
      const [files, map] = await Promise.all([findType(), mapOf(findBlob, district)])
      const { document, measure } = startDocument(files, { title, date: new Date(`${day}T12:00:00Z`) })
      const work = makeBook({ measure, paper, system, day, district, map, answered, plans }, refs, hasFront)
      let step = work.next()
      while (!step.done) {
        onProgress({ stage: 'setting', ...step.value })
        await turn()
        step = work.next()
      }
      const pages = step.value
      const bytes = await writePdf(document, pages, async (done) => {
        if (done % PAGES_A_MESSAGE !== 0) return
        onProgress({ stage: 'writing', done, of: pages.length, title: '' })
        await turn()
      })
      return { bytes, pageCount: pages.length, unwritten: [...measure.unwritten].join(' ') }
    },
  }
}

/** The district's map, where it can be had: without it the sheets show their own places and say so. */
async function mapOf(findBlob: FindBlob, { map }: District): Promise<DistrictMap | undefined> {
  const bytes = map && (await findBlob(map.hash).catch(() => undefined))
  const decoded = bytes && decodeDistrictMap(bytes)
  return decoded && !('code' in decoded) ? decoded : undefined
}
