import { describe, expect, test } from 'vitest'
import { figureLines } from '@/app/_compare/figure-rows'
import { fullWidthOf } from '@/app/_charts/supply-strip'
import { evaluatePlan, type SupplyResult } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const answered = evaluatePlan(smallBundle(), { quick: true })
const plan = (figures: Partial<SupplyResult>, tenderCount = 2) => ({
  result: { ...answered, tenders: answered.tenders.slice(0, 1).flatMap((tender) => Array.from({ length: tenderCount }, () => tender)), ...figures }, names: () => undefined,
})
const marks = (key: string, ...columns: ReturnType<typeof plan>[]) =>
  figureLines(columns, 'us').find((line) => line.key === key)?.cells.map(({ mark }) => mark?.text.replaceAll('\u00a0', ' '))

describe('plans side by side', () => {
  test('a plan that meets its need with less is not worse than one that exceeds it', () => {
    const [lean, rich] = [plan({ sustainable_gpm: 510, needed_gpm: 500 }, 2), plan({ sustainable_gpm: 900, needed_gpm: 500 }, 5)]
    expect(marks('sustainable', lean, rich)).toEqual(['meets the need', 'meets the need'])
    expect(marks('hauled', lean, plan({ sustainable_gpm: 900, needed_gpm: 500, hauledCapacity_gpm: 2000 }))).toEqual([undefined, undefined])
    expect(marks('tenders', lean, rich)).toEqual(['fewest', undefined])
  })

  test('one that falls short says by how much, from the figures as shown', () => {
    expect(marks('sustainable', plan({ sustainable_gpm: 292, needed_gpm: 750 }), plan({ sustainable_gpm: 760, needed_gpm: 750 }))).toEqual(['short by 460 gpm, expected', 'meets the need'])
  })

  test('plans are told apart by the dependable flow once it is known of all, and each line says which flow it is', () => {
    const nights = (flow_gpm: number) => ({ flow_gpm, share: 0.9, shareError: 0.015, low_gpm: flow_gpm, high_gpm: flow_gpm, nightCount: 400, seed: 1 })
    const [close, safe] = [plan({ sustainable_gpm: 510, needed_gpm: 500, dependable: nights(480) }, 2), plan({ sustainable_gpm: 900, needed_gpm: 500, dependable: nights(800) }, 5)]
    expect(marks('dependable', close, safe)).toEqual(['short by 20 gpm, dependable', 'meets the need'])
    expect(marks('sustainable', close, safe)).toEqual(['meets the need', 'meets the need'])
    // Two tenders that meet it only as expected are no better than five that can be depended on.
    expect(marks('tenders', close, safe)).toEqual([undefined, undefined])
    expect(figureLines([close, safe], 'us').find(({ key }) => key === 'spare')?.label).toBe('Over or under the need, dependable')
    expect(figureLines([close, plan({ sustainable_gpm: 900, needed_gpm: 500 })], 'us').find(({ key }) => key === 'spare')?.label).toBe('Over or under the need, expected')
  })

  test('earlier counts among those that meet the need, and fewer tenders that do not meet it count for nothing', () => {
    const [met, lateMet, short] = [plan({ sustainable_gpm: 760, needed_gpm: 750, supplyReady_s: 1200 }, 4), plan({ sustainable_gpm: 800, needed_gpm: 750, supplyReady_s: 1500 }, 6), plan({ sustainable_gpm: 292, needed_gpm: 750, supplyReady_s: 600 }, 1)]
    expect(marks('ready', met, lateMet, short)).toEqual(['earliest', undefined, undefined])
    expect(marks('tenders', met, lateMet, short)).toEqual(['fewest', undefined, undefined])
  })

  test('the highest flow is marked where nobody has said what is needed', () => {
    expect(marks('sustainable', plan({ sustainable_gpm: 292, needed_gpm: null }), plan({ sustainable_gpm: 400, needed_gpm: null }))).toEqual([undefined, 'highest'])
    expect(marks('stored', plan({ stored_gpm: 300, needed_gpm: 900, sustainable_gpm: 290 }), plan({ stored_gpm: 320, needed_gpm: 900, sustainable_gpm: 310 }))).toEqual([undefined, 'highest'])
  })
})

test('strips at one scale are as wide as the widest of them needs', () => {
  const other = { ...answered, needed_gpm: 4000 }
  expect(fullWidthOf(answered, other)).toBe(Math.max(fullWidthOf(answered), fullWidthOf(other)))
  expect(fullWidthOf(other)).toBe(4000)
  expect(fullWidthOf()).toBe(1)
})
