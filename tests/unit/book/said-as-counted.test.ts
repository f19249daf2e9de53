import { expect, test } from 'vitest'
import type { SheetRef } from '@/lib/book'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'
import { printed } from './support/print-sheets'
import { readPdf } from './support/read-pdf'

async function textOf(changes: Readonly<Record<string, unknown>>, ref: SheetRef = { kind: 'plan', planId: 'pl1' }): Promise<string> {
  const bundle = smallBundle(changes)
  const { district, plan } = bundle
  const { bytes } = await printed({ district, plans: [plan], answered: [{ bundle, result: evaluatePlan(bundle, { quick: true }) }], refs: [ref] })
  return (await readPdf(bytes)).pages.map(({ all }) => all).join(' ').replaceAll(/\s+/g, ' ')
}

test('a vehicle with no station is there when the answer takes it to arrive, and that is said to be assumed', async () => {
  const text = await textOf({ 'district.apparatus.0.stationId': undefined })
  expect(text).toContain('Engine 1 has no station; it is taken to arrive 15 min after dispatch.')
  expect(text).toMatch(/Pumps at the fill site Mill pond fill 15 min assumed/)
  expect(await textOf({ 'district.apparatus.0.stationId': undefined }, { kind: 'fill', planId: 'pl1', siteId: 'f1' })).toContain('there 15 min (assumed)')
})

test('a way that is a straight line says so, and is no handbook figure; one whose length was entered is', async () => {
  expect(await textOf({ 'plan.legNotes.0.distance_mi': undefined })).toMatch(/ mi by a straight line with bends, both assumed/)
  const entered = await textOf({})
  expect(entered).toContain('2 mi, by handbook')
  expect(entered).not.toContain('straight line')
})

test('a lift that was typed and not measured is printed as assumed', async () => {
  const typed = (mark: string) => ({ 'district.draftSites.0.evidence': { lift_ft: { mark } } })
  const fill: SheetRef = { kind: 'fill', planId: 'pl1', siteId: 'f1' }, draft: SheetRef = { kind: 'draft', draftSiteId: 'ds1' }
  expect(await textOf(typed('assumed'))).toContain('lift 10 ft (assumed)')
  expect(await textOf(typed('assumed'), fill)).toContain('lift 10 ft (assumed)')
  expect(await textOf(typed('assumed'), draft)).toContain('nobody measured it')
  expect(await textOf(typed('measured'))).not.toContain('(assumed)')
  expect(await textOf(typed('measured'), draft)).not.toContain('nobody measured it')
})
