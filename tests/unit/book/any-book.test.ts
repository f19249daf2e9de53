import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { MARGIN } from '@/app/_book/page/paper'
import { sheetsOf } from '@/lib/book'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'
import { shippedBundle, shippedPlans } from '../demo/shipped-demo'
import { printed } from './support/print-sheets'
import { overlap, readPdf } from './support/read-pdf'

/** Names as long as they may be: of many words, of one, of accents, of signs the typeface cannot write. */
const name = fc.oneof(
  fc.array(fc.constantFrom('Upper', 'Lower', 'St. Aldhelm’s', 'Wolfengrabenmühle', 'cross-roads', 'Élodie', 'Ł', 'Пруд', 'of the', '12½'), { minLength: 1, maxLength: 14 }).map((words) => words.join(' ').slice(0, 120)),
  fc.integer({ min: 1, max: 120 }).map((length) => 'Watermeadowside'.repeat(8).slice(0, length)),
).map((text) => text.trim() || 'x')
const notes = fc.array(name, { minLength: 0, maxLength: 24 }).map((parts) => parts.join('. ').slice(0, 4000))

type Shape = { names: string[]; notes: string; bays: number; positions: number; manner: 'backIn' | 'driveThrough'; tankLink: 'drains' | 'jetSiphon'; isNursed: boolean; line_ft: number; suction_ft: number }
const shape: fc.Arbitrary<Shape> = fc.record({
  names: fc.array(name, { minLength: 12, maxLength: 12 }), notes, bays: fc.integer({ min: 1, max: 12 }), positions: fc.integer({ min: 1, max: 12 }),
  manner: fc.constantFrom('backIn', 'driveThrough'), tankLink: fc.constantFrom('drains', 'jetSiphon'), isNursed: fc.boolean(), line_ft: fc.integer({ min: 10, max: 600 }), suction_ft: fc.integer({ min: 0, max: 120 }),
})

/** A plan of the demo with everything named anew and its sites of any size. */
function remade(bundle: Bundle, { names, notes: text, bays, positions, manner, tankLink, isNursed, line_ft, suction_ft }: Shape): Bundle {
  let next = 0
  const again = <T extends { name: string }>(items: readonly T[]): T[] => items.map((item) => ({ ...item, name: names[next++ % names.length] ?? item.name, ...(text && { notes: text }) }))
  const { district, plan } = bundle
  const made = {
    ...bundle,
    district: {
      ...district, name: names[0] ?? 'x', stations: again(district.stations), sources: again(district.sources), draftSites: again(district.draftSites).map((site) => ({ ...site, turnRound: text.slice(0, 400) })), hazards: again(district.hazards),
      apparatus: again(district.apparatus), equipment: again(district.equipment), roadNotes: again(district.roadNotes),
    },
    plan: {
      ...plan, name: names[1] ?? 'x', notes: text,
      fillSites: again(plan.fillSites).map((site) => ({ ...site, bayCount: bays, fillLine: { size_in: 4, length_ft: line_ft }, suction: { size_in: 6, length_ft: suction_ft, lineCount: 2 } })),
      dumpSites: again(plan.dumpSites).map((site) => ({ ...site, positionCount: positions, manner, tankLink, portableTankIds: district.equipment.filter(({ kind }) => kind === 'portableTank').map(({ id }) => id), ...(isNursed && { nurseId: district.apparatus.find(({ kind }) => kind === 'tender')?.id }) })),
    },
  }
  const read = readBundle(JSON.parse(JSON.stringify(made)))
  if (!isBundle(read)) throw new RangeError(JSON.stringify(read))
  return read
}

describe('sheets of any district', () => {
  test('keep every text whole, within the margins and off every other', async () => {
    const plans = shippedPlans()
    await fc.assert(fc.asyncProperty(shape, fc.integer({ min: 0, max: plans.length - 1 }), fc.constantFrom('a4', 'letter'), async (asked, which, paper) => {
      const bundle = remade(shippedBundle(plans[which]!.id), asked)
      const answered = [{ bundle, result: evaluatePlan(bundle, { quick: true }) }]
      const { draftSites, hazards } = bundle.district
      const district = { ...bundle.district, draftSites: draftSites.slice(0, 2), hazards: hazards.slice(0, 3) }
      const { bytes, pages: written } = await printed({ district, plans: [bundle.plan], answered, refs: sheetsOf(district, [bundle.plan]), hasFront: true, paper })
      const { pages } = await readPdf(bytes)
      expect(pages.length).toBe(written.length)
      for (const { texts, across, down } of pages) {
        for (const { text, corners } of texts) for (const [x, y] of corners)
          expect(x >= MARGIN.left - 1 && x <= across - MARGIN.right + 1 && y >= MARGIN.bottom - 3 && y <= down - MARGIN.top + 8, text).toBe(true)
        texts.forEach((one, i) => { for (const other of texts.slice(i + 1)) expect(overlap(one, other), `${one.text} | ${other.text}`).toBe(false) })
      }
      const all = pages.map((page) => page.all).join(' ').replaceAll(/\s/g, '')
      const longest = bundle.plan.fillSites[0]!.name.normalize('NFC').replaceAll(/[Пруд]/g, '?').replaceAll(/\s/g, '')
      expect(all).toContain(longest)
    }), { numRuns: 4, seed: 11 })
  }, 180_000)

  test('texts that lie on each other are found, turned ones too', () => {
    const at = (x: number, y: number) => ({ text: '', isLevel: true, corners: [[x, y], [x + 20, y], [x + 20, y + 8], [x, y + 8]] as [number, number][] })
    const turned = { text: '', isLevel: false, corners: [[10, 20], [20, 10], [26, 16], [16, 26]] as [number, number][] }
    expect(overlap(at(0, 0), at(15, 5))).toBe(true)
    expect(overlap(at(0, 0), at(21, 0))).toBe(false)
    expect(overlap(at(0, 12), turned)).toBe(true)
    expect(overlap(at(0, 0), turned)).toBe(false)
  })
})
