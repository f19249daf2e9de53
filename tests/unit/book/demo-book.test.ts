import { beforeAll, describe, expect, test } from 'vitest'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { answerSentences, formatAsked, formatFrom, formatGiven } from '@/app/_text'
import { namesFor } from '@/app/_book/sheets/kit'
import { MARGIN } from '@/app/_book/page/paper'
import { sheetsOf, type AnsweredPlan } from '@/lib/book'
import { decodeDistrictMap, type DistrictMap } from '@/lib/osm'
import type { District } from '@/lib/plan'
import { shippedBundle, shippedMap, shippedPlans } from '../demo/shipped-demo'
import { answered as answerOf, printed, type Printed } from './support/print-sheets'
import { overlap, readPdf, type ReadPage } from './support/read-pdf'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ')
const squeezed = (text: string): string => plain(text).replaceAll(' ', '')

let district: District, map: DistrictMap, answered: AnsweredPlan[]

beforeAll(async () => {
  const { mapBlob } = await importWithNode(new TextEncoder().encode(shippedMap()), 'ostrel-valley.osm')
  const decoded = decodeDistrictMap(mapBlob)
  if ('code' in decoded) throw new RangeError(decoded.code)
  map = decoded
  answered = shippedPlans().map(({ id }) => answerOf(shippedBundle(id)))
  district = answered[0]!.bundle.district
})

describe.each([{ paper: 'a4', system: 'metric', across: 595.28, down: 841.89 }, { paper: 'letter', system: 'us', across: 612, down: 792 }] as const)('the demo’s book on $paper', ({ paper, system, across, down }) => {
  let book: Printed, pages: ReadPage[], fonts: Set<string>

  beforeAll(async () => {
    const plans = answered.map(({ bundle }) => bundle.plan)
    book = await printed({ district, map, plans, answered, refs: sheetsOf(district, plans), hasFront: true, paper, system })
    ;({ pages, fonts } = await readPdf(book.bytes))
  })

  test('has the pages it says, each of the paper’s size (ISO 216; US Letter 8.5 by 11 in)', () => {
    expect(pages.length).toBe(book.pages.length)
    pages.forEach((page, i) => {
      expect(page.across).toBeCloseTo(across, 1)
      expect(page.down).toBeCloseTo(down, 1)
      expect(page.all).toContain(`Page ${i + 1} of ${pages.length}`)
      expect(page.all).toContain('A planning aid. Local procedures')
      expect(page.all).toContain('Printed 4 Mar 2026')
    })
  })

  test('keeps every text within the margins', () => {
    const out = pages.flatMap(({ texts, across: width, down: height }, i) => texts
      .filter(({ corners }) => corners.some(([x, y]) => x < MARGIN.left - 1 || x > width - MARGIN.right + 1 || y < MARGIN.bottom - 3 || y > height - MARGIN.top + 8))
      .map(({ text }) => `${i + 1}: ${text}`))
    expect(out).toEqual([])
  })

  test('writes no text over another', () => {
    const over = pages.flatMap(({ texts }, page) => texts.flatMap((one, i) => texts.slice(i + 1).filter((other) => overlap(one, other)).map((other) => `${page + 1}: ${one.text} | ${other.text}`)))
    expect(over).toEqual([])
  })

  test('says every plan’s answer as the screen does, and its flows and times', () => {
    for (const { bundle: { plan }, result } of answered) {
      const first = book.pages.findIndex(({ name }) => name === `plan ${plan.id}`)
      const sheet = squeezed([0, 1].map((more) => pages[first + more]?.all ?? '').join(' '))
      for (const sentence of answerSentences(result, namesFor({ district, answered }, plan.id), system)) expect(sheet).toContain(squeezed(sentence))
      for (const figure of [formatGiven(result.dependable!.flow_gpm, system, result.needed_gpm), formatGiven(result.sustainable_gpm, system, result.needed_gpm), formatAsked(result.needed_gpm, system), formatFrom(result.supplyReady_s!)])
        expect(sheet).toContain(squeezed(figure))
      for (const { tenderId } of plan.tenders) expect(sheet).toContain(squeezed(district.apparatus.find(({ id }) => id === tenderId)!.name))
    }
  })

  test('leads from the contents to the page where each sheet begins', () => {
    const contents = pages.filter(({ all }) => all.includes('Contents')).map(({ all }) => all).join(' ')
    for (const [i, { name, title }] of book.pages.entries()) {
      if (name === undefined || name.startsWith('front')) continue
      const own = title!.slice(title!.indexOf(': ') + 2)
      expect(squeezed(pages[i]!.all)).toContain(squeezed(own))
      expect(squeezed(contents)).toContain(squeezed(own))
      expect(contents).toMatch(new RegExp(`\\b${i + 1}\\b`))
    }
  })

  test('is set in the embedded typeface alone', () => {
    expect(book.bytes.length).toBeLessThan(1_500_000)
    expect(String(Buffer.from(book.bytes))).not.toMatch(/Helvetica|Times-Roman/)
    expect(fonts.size).toBeGreaterThan(0)
  })

  test('has no picture in it: maps and sketches are lines and text', () => {
    expect(String(Buffer.from(book.bytes))).not.toContain('/Subtype /Image')
  })
})
