import { describe, expect, test } from 'vitest'
import { crewOf } from '@/lib/advise'
import { compilePlan, crewDefaults } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

describe('a crew nobody has said', () => {
  test('is one number for staffing and for advice', () => {
    const { apparatus } = smallBundle().district
    expect(apparatus.length).toBeGreaterThan(3)
    for (const unit of apparatus) expect(crewOf({ ...unit, crewCount: undefined } as typeof unit)).toBe(crewDefaults[unit.kind].value)
  })

  test('staffs as the same crew does when it is entered', () => {
    const count = (index: number) => crewDefaults[smallBundle().district.apparatus[index]!.kind].value
    const some = { 'district.apparatus.2.crewCount': 3 }
    const all = Object.fromEntries([0, 1, 3].map((index) => [`district.apparatus.${index}.crewCount`, count(index)]))
    expect(compilePlan(smallBundle(some)).spec).toEqual(compilePlan(smallBundle({ ...some, ...all })).spec)
  })
})
