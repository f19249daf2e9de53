import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { BackUpCard } from '@/app/_draft/card/back-up-card'
import { Providers } from '@/app/_frame/providers'
import type { Pumper } from '@/lib/plan'
import { backUpCard } from '@/lib/priming'
import { backUpInputs, findDraftSheet } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

function cardWords(changes: Readonly<Record<string, unknown>>): string {
  const { district } = smallBundle({ 'district.apparatus.0.suction_in': 5, 'district.apparatus.0.suction_ft': 20, ...changes })
  const pump = district.apparatus[0] as Pumper
  const sheet = findDraftSheet(district, district.draftSites[0]!, pump)!
  const inputs = backUpInputs(pump, sheet)
  const card = backUpCard(inputs.rig, inputs.site, inputs.openDischarge_gpm)
  const markup = renderToStaticMarkup(<Providers system="us" theme={undefined}><BackUpCard sheet={sheet} inputs={inputs} card={card} /></Providers>)
  return markup.replace(/<[^>]+>/g, ' ').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim()
}

test('a card that says it cannot work says when to give up: before the first valve, by lift and reach', () => {
  expect(cardWords({ 'district.draftSites.0.lift_ft': 24 })).toMatch(/Give up when before the first valve is opened: the lift of 24 ft is beyond the [\d.]+ ft that this rig primes\./)
})

test('a card that works waits for its signs, and not for another', () => {
  const works = cardWords({ 'district.draftSites.0.lift_ft': 5 })
  expect(works).toMatch(/Give up when (tank|the tank|.*gal)/)
  expect(works).not.toContain('before the first valve')
})

test('a bank that takes more hard suction than the pumper carries is said on the card', () => {
  expect(cardWords({ 'district.draftSites.0.hoseRun_ft': 40 })).toMatch(/Engine 1 carries 20 ft of 5 in hard suction; drafting at Mill pond bank takes 40 ft\./)
})
