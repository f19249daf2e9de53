import { expect, test } from 'vitest'
import { faultsFor, vacuumFaults, type VacuumReading } from '../../../lib/priming'

const readings: readonly VacuumReading[] = ['none', 'low-and-steady', 'builds-then-falls', 'above-lift-no-water', 'right-but-pressure-swings']

test('every reading leaves some faults standing, and not all of them', () => {
  for (const reading of readings) {
    expect(faultsFor(reading).length).toBeGreaterThan(0)
    expect(faultsFor(reading).length).toBeLessThan(vacuumFaults.length)
  }
})

test('the trial with the intake shut parts the faults in two, none on both sides', () => {
  for (const reading of readings) {
    const outside = faultsFor(reading, true)
    const inside = faultsFor(reading, false)
    expect([...outside, ...inside].map(({ code }) => code).sort()).toEqual(faultsFor(reading).map(({ code }) => code).sort())
  }
})

test('vacuum with the intake shut clears the primer; none leaves primer and pump', () => {
  expect(faultsFor('none', true).map(({ code }) => code)).not.toContain('primer-not-turning')
  expect(faultsFor('none', false)[0]?.code).toBe('primer-not-turning')
})

test('vacuum above the lift with no water points down the hose', () => {
  expect(faultsFor('above-lift-no-water').slice(0, 3).map(({ code }) => code)).toEqual(['intake-valve-shut', 'strainer-blocked', 'lining-collapsed'])
})
