import { describe, expect, test } from 'vitest'
import { layBegins, layGoals } from '@/app/_hose/lay-ends'
import { newLay } from '@/app/_hose/new-lay'
import { FIRE_GROUND } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const made = (changes: Readonly<Record<string, unknown>> = {}) => {
  const { district, plan } = smallBundle(changes)
  let count = 0
  return newLay({ district, plan, begins: layBegins(district), goals: layGoals(district, plan, () => 'Barn'), name: 'Hose lay 1', newId: () => `n${++count}` })
}

describe('a lay to begin with', () => {
  test('goes from the nearest water to the fire ground', () => {
    expect(made()).toMatchObject({ fromId: 'ds1', toId: FIRE_GROUND, points: [{ lat: 45.02, lon: -40 }, { lat: 45, lon: -40.05 }] })
    const near = { id: 'so2', name: 'Near pond', kind: 'pond', point: { lat: 45, lon: -40.049 } }
    expect(made({ 'district.sources': [{ id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40 } }, near] })!.fromId).toBe('so2')
  })

  test('takes a pumper that the plan does not use, or none', () => {
    expect(made()!.pumperIds).toEqual([])
    expect(made({ 'plan.fillSites.0.pumperId': undefined })!.pumperIds).toEqual(['p1'])
  })

  test('is of the hose of which there is most', () => {
    const hose = (id: string, size_in: number, length_ft: number) => ({ id, name: id, kind: 'hose', size_in, length_ft })
    expect(made({ 'district.equipment': [hose('a', 5, 500), hose('b', 3, 400), hose('c', 3, 400)], 'plan.dumpSites.0.portableTankIds': undefined, 'plan.dumpSites.0.tankCapacity_gal': 3000 })!.stretches[0]!.size_in).toBe(3)
    expect(made({ 'district.apparatus.0.supplyHose_in': 4.5, 'district.apparatus.0.supplyHose_ft': 800 })!.stretches[0]!.size_in).toBe(4.5)
  })

  test('needs a source', () => {
    expect(made({ 'district.sources': [], 'district.draftSites': [], 'plan.fillSites.0.draftSiteId': undefined })).toBeUndefined()
  })
})
