import { expect, test } from 'vitest'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const bundle = smallBundle()
const { district } = bundle
const [fill] = bundle.plan.fillSites
const pumperId = fill!.pumperId!

/** The plan with that much hard suction on its fill pumper, and a bank that takes so much. */
function issuesWith(carried: { suction_in?: number; suction_ft?: number }, hoseRun_ft: number) {
  const apparatus = district.apparatus.map((unit) => (unit.id === pumperId ? { ...unit, ...carried } : unit)) as typeof district.apparatus
  const draftSites = district.draftSites.map((site) => ({ ...site, hoseRun_ft }))
  return compilePlan({ ...bundle, district: { ...district, apparatus, draftSites } }).issues.filter(({ code }) => code === 'suction-not-carried')
}

test('a draft that takes more hard suction than its pumper carries says so, with both lengths', () => {
  expect(issuesWith({ suction_in: 5, suction_ft: 20 }, 30)).toMatchObject([{ severity: 'warn', subjectIds: [pumperId, fill!.id], values: { size_in: 5, carried_ft: 20, needed_ft: 30 } }])
})

test('enough hard suction, or none that anybody has said, is no warning', () => {
  expect(issuesWith({ suction_in: 5, suction_ft: 30 }, 30)).toEqual([])
  expect(issuesWith({}, 30)).toEqual([])
})
