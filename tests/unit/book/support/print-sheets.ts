import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { UnitSystem } from '@/app/_text'
import { makeBook } from '@/app/_book/make-book'
import type { Paper } from '@/app/_book/page/paper'
import { startDocument, type TypeFiles } from '@/app/_book/pdf/type'
import { writePdf, type WrittenPage } from '@/app/_book/pdf/write-pdf'
import type { AnsweredPlan, SheetRef } from '@/lib/book'
import { flowDoubt, prepareDoubt } from '@/lib/doubt'
import type { DistrictMap } from '@/lib/osm'
import type { Bundle, District, Plan } from '@/lib/plan'
import { compilePlan, evaluateCompiled } from '@/lib/supply'

const resolve = createRequire(import.meta.url).resolve
const bytesOf = (weight: string): Uint8Array => new Uint8Array(readFileSync(resolve(`@expo-google-fonts/atkinson-hyperlegible-next/${weight}/AtkinsonHyperlegibleNext_${weight}.ttf`)))

export const typeFiles: TypeFiles = { regular: bytesOf('400Regular'), bold: bytesOf('700Bold') }

/** A plan answered as the app does it, of fewer nights. */
export function answered(bundle: Bundle): AnsweredPlan {
  const compiled = compilePlan(bundle)
  const result = evaluateCompiled(compiled)
  const model = prepareDoubt(compiled)
  return { bundle, result: model && result.sustainable_gpm !== null ? { ...result, ...flowDoubt(model, { nightCount: 20 }) } : result }
}

export type SheetsAsked = { district: District; plans: readonly Plan[]; answered: readonly AnsweredPlan[]; map?: Pick<DistrictMap, 'features'>; refs: readonly SheetRef[]; hasFront?: boolean; paper?: Paper; system?: UnitSystem }
export type Printed = { pages: WrittenPage[]; bytes: Uint8Array }

/** Sheets as a file, the same way as the app's worker makes them. */
export async function printed({ hasFront = false, paper = 'letter', system = 'us', refs, ...kit }: SheetsAsked): Promise<Printed> {
  const { document, measure } = startDocument(typeFiles, { title: 'Test', date: new Date('2026-03-04T12:00:00Z') })
  const work = makeBook({ measure, paper, system, day: '2026-03-04', ...kit }, refs, hasFront)
  let step = work.next()
  while (!step.done) step = work.next()
  return { pages: step.value, bytes: await writePdf(document, step.value) }
}
