import { describe, expect, test } from 'vitest'
import { difference } from './compare'
import { randomSpecs } from './random-specs'

const isWithin = (share: number): boolean => Math.abs(share) <= 0.01

describe('events and one-second steps', () => {
  test('agree within 1 % on delivered and on hauled volume in 99 of 100 layouts each; where not, smaller steps come to the events', () => {
    const specs = randomSpecs(200, (chance) => 0.2 + 0.5 * chance)
    const rows = specs.map((spec, k) => ({ k, ...difference(spec) }))
    const apart = rows.filter(({ deliveredShare, hauledShare }) => !isWithin(deliveredShare) || !isWithin(hauledShare))
    for (const { k, deliveredShare, hauledShare, losses } of apart) {
      const finer = difference(specs[k]!, 0.05)
      process.stdout.write(
        `layout ${k}: delivered ${(100 * deliveredShare).toFixed(2)} %, hauled ${(100 * hauledShare).toFixed(2)} % apart with steps of 1 s,`
        + ` ${(100 * finer.deliveredShare).toFixed(2)} % and ${(100 * finer.hauledShare).toFixed(2)} % with 0.05 s; drafts lost ${losses}\n`)
      expect(isWithin(finer.deliveredShare)).toBe(true)
      expect(isWithin(finer.hauledShare)).toBe(true)
    }
    const delivered = rows.filter(({ deliveredShare }) => isWithin(deliveredShare)).length
    const hauled = rows.filter(({ hauledShare }) => isWithin(hauledShare)).length
    process.stdout.write(`within 1 %: ${delivered} of ${rows.length} layouts on delivered, ${hauled} on hauled volume\n`)
    expect(delivered).toBeGreaterThanOrEqual(0.99 * rows.length)
    expect(hauled).toBeGreaterThanOrEqual(0.99 * rows.length)
  })

  // Asked for more than the haul, the draft is lost again and again, and whether a load comes a second before or
  // after the loss decides over the next minutes: a second is then no small step.
  test('agree within 1 % for a flow beyond the haul in 9 of 10 layouts, and with smaller steps in the rest', () => {
    const specs = randomSpecs(60, (chance) => 1 + 0.4 * chance, 19991231)
    const apart = specs.filter((spec) => !isWithin(difference(spec).deliveredShare))
    process.stdout.write(`beyond the haul: ${specs.length - apart.length} of ${specs.length} layouts agree within 1 %\n`)
    for (const spec of apart) expect(Math.abs(difference(spec, 0.05).deliveredShare)).toBeLessThan(0.01)
    expect(apart.length).toBeLessThanOrEqual(specs.length / 10)
  })
})
