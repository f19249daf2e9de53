import { expect, test } from 'vitest'
import { bookService, type BookTold } from '@/app/_book/book-service'
import { startDocument } from '@/app/_book/pdf/type'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'
import { shippedBundle } from '../demo/shipped-demo'
import { typeFiles } from './support/print-sheets'
import { readPdf } from './support/read-pdf'

const nothing = async (): Promise<undefined> => undefined

test('the book’s worker answers plans as everything else does, tells how far it is, and prints without a map', async () => {
  const bundle: Bundle = shippedBundle('plan-gander-hill')
  const service = bookService(nothing, async () => typeFiles, async () => undefined)
  const answered = await service.answer(bundle)
  expect(answered.result).toEqual(evaluatePlan(bundle))
  const told: BookTold[] = []
  const refs = [{ kind: 'plan', planId: bundle.plan.id } as const, { kind: 'draft', draftSiteId: 'draft-boat-launch' } as const]
  const made = await service.print({ district: bundle.district, plans: [bundle.plan], answered: [answered], refs, hasFront: false, paper: 'letter', system: 'us', day: '2026-03-04', title: 'Two sheets' }, (one) => { told.push(one) })
  const { pages } = await readPdf(made.bytes)
  expect(pages).toHaveLength(made.pageCount)
  expect(told.filter(({ stage }) => stage === 'setting').map(({ done, of }) => [done, of])).toEqual([[1, 2], [2, 2]])
  expect(told.some(({ stage }) => stage === 'writing')).toBe(true)
  const all = pages.map((page) => page.all).join(' ')
  expect(all).toContain('No map has been imported for this district')
  // Nothing was tested for doubt here, and the sheet says so.
  expect(all).toContain('not tested')
  expect(made.unwritten).toBe('')
})

test('signs that the typeface lacks are named, and primes and arrows written by what comes nearest', () => {
  const { measure } = startDocument(typeFiles, { title: 't', date: new Date(0) })
  expect(measure.clean('5′ 6″ → Łódź − ½ × ≥')).toBe('5’ 6” – Łódź − ½ × ≥')
  expect([...measure.unwritten]).toEqual([])
  expect(measure.clean('Пруд 池')).toBe('???? ?')
  expect([...measure.unwritten].join('')).toBe('Пруд池')
})
