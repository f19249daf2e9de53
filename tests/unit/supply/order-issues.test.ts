import { describe, expect, it } from 'vitest'
import { issue } from '@/lib/issue'
import { evaluatePlan, inOrderOfEffect, isUnfinished } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const effects = { sustainable_gpm: 300, tenderCount: 3, links: [{ subjectId: 'f1', gain_gpm: 20 }, { subjectId: 'f1', gain_gpm: 4 }, { subjectId: 'du1', gain_gpm: 8 }] }
const order = (...issues: ReturnType<typeof issue>[]) => inOrderOfEffect(issues, effects).map(({ code }) => code)

describe('what there is to look at', () => {
  it('stands in the order of what it does to the flow: danger first, then what is at stake, then the rest', () => {
    expect(order(
      issue('route-gates', 'warn', ['t1']),
      issue('warm-water', 'note', ['f1']),
      issue('staff-short', 'warn', ['du1']),
      issue('lift-assumed', 'warn', ['f1']),
      issue('tender-cannot-reach', 'warn', ['t3']),
      issue('dump-pumper-assumed', 'warn', ['du1']),
      issue('short-of-need', 'warn', ['pl1']),
      issue('water-gap', 'warn', []),
      issue('dump-site-without-tank', 'block', ['du1']),
      issue('lift-impossible', 'block', ['f1']),
      issue('methods-far-apart', 'note', ['h1']),
    )).toEqual([
      'lift-impossible', 'dump-site-without-tank', 'water-gap', 'short-of-need', 'dump-pumper-assumed',
      'tender-cannot-reach', 'lift-assumed', 'staff-short', 'route-gates', 'warm-water', 'methods-far-apart',
    ])
  })

  it('keeps the order in which it was found where nothing tells two apart', () => {
    expect(order(issue('route-gates', 'warn', ['a']), issue('route-weight-close', 'warn', ['b']))).toEqual(['route-gates', 'route-weight-close'])
  })

  it('is so ordered in every answer', () => {
    const { issues, links, sustainable_gpm, tenders } = evaluatePlan(smallBundle({ 'plan.dumpSites.0.pumperId': undefined, 'district.hazards.0.needed_gpm': 900 }))
    expect(issues).toEqual(inOrderOfEffect(issues, { sustainable_gpm, links, tenderCount: tenders.length }))
    expect(issues.slice(0, 2).map(({ code }) => code)).toEqual(['water-gap', 'short-of-need'])
  })
})

it('a form that goes on is told from a plan that cannot be', () => {
  expect(isUnfinished(issue('dump-site-without-tank', 'block'))).toBe(true)
  for (const code of ['lift-impossible', 'supply-never-ready', 'fill-site-dry', 'route-blocked', 'no-such-code']) expect(isUnfinished(issue(code, 'block')), code).toBe(false)
})

describe('a pumper nobody named', () => {
  it('is said of the dump site that counts on one', () => {
    expect(evaluatePlan(smallBundle({ 'plan.dumpSites.0.pumperId': undefined })).issues).toContainEqual(issue('dump-pumper-assumed', 'warn', ['du1'], { rated_gpm: 1000 }))
  })

  it('is said of a fill site whose rate was only entered, and not of a hydrant', () => {
    const entered = { 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.rate_gpm': 600 }
    expect(evaluatePlan(smallBundle(entered)).issues).toContainEqual(issue('fill-pumper-assumed', 'warn', ['f1'], { rate_gpm: 600 }))
    expect(evaluatePlan(smallBundle({ ...entered, 'district.sources.0.kind': 'pressureHydrant' })).issues.map(({ code }) => code)).not.toContain('fill-pumper-assumed')
  })
})
