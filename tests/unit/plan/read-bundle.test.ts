import { describe, expect, it } from 'vitest'
import { isBundle, readBundle } from '@/lib/plan'
import { smallBundleJson, smallJson } from '@/tests/fixtures/bundle'

const changed = (changes: Record<string, unknown>) => {
  const read = readBundle(smallJson(changes))
  return isBundle(read) ? [] : read.map(({ code, values }) => `${code} ${String(values.path ?? '')}`.trim())
}

describe('a bundle at the door', () => {
  it('comes in whole when it is right', () => {
    expect(isBundle(readBundle(structuredClone(smallBundleJson)))).toBe(true)
  })

  it.each([
    ['not an object', [null, 3, 'x', []], 'bundle-not-an-object'],
    ['another format', [{}, { format: 'other', version: 1 }], 'bundle-other-format'],
    ['a newer version', [{ format: 'millrace-plan', version: 2 }], 'bundle-newer'],
  ])('is refused when it is %s', (_, values, code) => {
    for (const value of values) expect(readBundle(value)).toMatchObject([{ code, severity: 'block' }])
  })

  it('names the item and the field that is wrong', () => {
    expect(changed({ 'district.draftSites.0.lift_ft': 'ten' })).toEqual(['input-wrong-type district.draftSites[0] (Mill pond bank).lift_ft'])
    expect(changed({ 'district.draftSites.0.lift_ft': -30 })).toEqual(['input-too-small district.draftSites[0] (Mill pond bank).lift_ft'])
    expect(changed({ 'district.apparatus.2.tank_gal': 1e12 })).toEqual(['input-too-big district.apparatus[2] (Tender 1).tank_gal'])
    expect(changed({ 'plan.fillSites': undefined })).toEqual(['input-missing plan.fillSites'])
    expect(changed({ 'plan.fillSites.0.colour': 'red' })).toEqual(['input-unknown-field plan.fillSites[0] (Mill pond fill)'])
    expect(changed({ 'district.apparatus.0.kind': 'boat' })).toEqual(['input-not-a-choice district.apparatus[0] (Engine 1).kind'])
    expect(changed({ 'district.sources.0.kind': 'well' })).toEqual(['input-not-a-choice district.sources[0] (Mill pond).kind'])
    expect(changed({ 'district.sources.0.point.lat': null })).toEqual(['input-wrong-type district.sources[0] (Mill pond).point.lat'])
    expect(changed({ 'plan.name': '' })).toEqual(['input-too-short plan.name'])
  })

  it('names both places of an id used twice', () => {
    expect(changed({ 'district.apparatus.1.id': 'p1' })).toEqual(['id-doubled district.apparatus[1]'])
  })
})
