import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { SupplyStrip } from '@/app/_charts/supply-strip'
import { Providers } from '@/app/_frame/providers'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const stripOf = (changes: Readonly<Record<string, unknown>>): string =>
  renderToStaticMarkup(<Providers system="us" theme={undefined}><SupplyStrip result={evaluatePlan(smallBundle(changes), { quick: true })} names={() => undefined} /></Providers>)

test('the source part of the strip says that nobody knows how much water there is, until somebody does', () => {
  expect(stripOf({})).toContain('volume not known')
  expect(stripOf({ 'district.sources.0.kind': 'stream' })).toContain('its flow is not known')
  expect(stripOf({ 'district.sources.0.usable_gal': 40_000 })).not.toMatch(/not known/)
})
