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

test('what a part could pass is never shown as water that comes, and the fire ground says what is expected there', () => {
  const parts = stripOf({}).split('<li>').slice(1)
  expect(parts).toHaveLength(5)
  for (const part of parts) expect(part).toContain('could pass')
  expect(parts.map((part) => part.includes('expected '))).toEqual([false, false, false, false, true])
})

test('where no water is named the source is not known, and no band is drawn for it', () => {
  const unnamed = stripOf({ 'plan.fillSites.0.draftSiteId': undefined })
  const [source = '', fill = ''] = unnamed.split('<li>').slice(1)
  expect(source).toMatch(/not known.*no water named/)
  expect(source).not.toContain('could pass')
  expect(fill).toContain('could pass')
  expect(unnamed).toMatch(/ d="M100 /)
  expect(stripOf({})).toMatch(/ d="M0 /)
})
