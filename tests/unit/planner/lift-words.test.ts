import { expect, test } from 'vitest'
import { liftWords } from '@/app/_plan/lift-words'
import { evaluatePlan, explain, isWorking } from '@/lib/supply'
import { shippedBundle } from '../demo/shipped-demo'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

test('a lift that the season adds to says what it is made of, on the row and in its working', () => {
  const bundle = shippedBundle('plan-yarrow-bank')
  const site = evaluatePlan(bundle, { quick: true }).sites.find(({ id }) => id === 'fill-covered-bridge')
  if (site?.kind !== 'fillSite') throw new Error('the fill site is missing')
  expect(plain(liftWords(site, 'us'))).toBe('19.9 ft (18.5 ft measured + 1.4 ft the water falls in the season planned for)')
  const lift = explain(bundle, `site/${site.id}/draft_gpm`)?.inputs.find(({ symbol }) => symbol === 'lift_ft')
  if (!lift || !isWorking(lift.from)) throw new Error('the lift has no working')
  expect(lift.value).toBeCloseTo(19.9, 9)
  expect(lift.from.inputs.map(({ symbol, value }) => [symbol, value])).toEqual([['lift_ft', 18.5], ['seasonalDrop_ft', 1.4]])
  for (const { from } of lift.from.inputs) expect(from).toMatchObject({ mark: 'measured' })
})

test('a lift that is one number is that number, said to be assumed where nobody measured it', () => {
  expect(plain(liftWords({ lift_ft: 6.5, seasonDrop_ft: 0, liftFrom: 'measured' }, 'us'))).toBe('6.5 ft')
  expect(plain(liftWords({ lift_ft: 10, seasonDrop_ft: 0, liftFrom: 'assumed' }, 'us'))).toBe('10 ft (assumed)')
  expect(liftWords({ lift_ft: null, seasonDrop_ft: null, liftFrom: null }, 'us')).toBe('not known')
})
