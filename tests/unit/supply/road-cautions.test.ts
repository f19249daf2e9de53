import { describe, expect, it } from 'vitest'
import { issueLines } from '@/app/_text'
import { evaluatePlan } from '@/lib/supply'
import { RoadCautions } from '@/lib/supply/road-cautions'
import { issue } from '@/lib/issue'
import { namesOf } from '@/lib/plan'
import { demoBundle } from '@/tests/fixtures/demo-roads'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const bridge = (name: string, roadId: number) => issue('route-bridge-unknown', 'warn', [], { name, roadId, lat: 44 + roadId / 100, lon: -73 })
const narrow = (name: string, length_mi: number) => issue('route-narrow', 'warn', [], { name, length_mi, lat: 44 + length_mi, lon: -73 })
const linesOf = (cautions: RoadCautions) => issueLines(cautions.list(), (id) => (/^t\d/.test(id) ? id.toUpperCase() : undefined), 'us').map(({ text }) => plain(text))

describe('cautions of the roads', () => {
  it('are said once a road, of all whom they concern, with how many bridges it has', () => {
    const cautions = new RoadCautions()
    cautions.add(bridge('Mill Road', 1), 't1')
    cautions.add(bridge('Mill Road', 2), 't2')
    cautions.add(bridge('Mill Road', 1), 't2')
    cautions.add(bridge('Dam Road', 3), 't1')
    expect(linesOf(cautions)).toEqual([
      '2 bridges on Mill Road have no known weight limit. Find the posting before a loaded tender crosses. This concerns T1 and T2.',
      'The bridge on Dam Road has no known weight limit. Find the posting before a loaded tender crosses. This concerns T1.',
    ])
  })

  it('count the longest stretch and the heaviest vehicle, and never put two postings together', () => {
    const cautions = new RoadCautions()
    cautions.add(narrow('Mill Road', 0.04), 't1')
    cautions.add(narrow('Mill Road', 0.11), 't2')
    cautions.add(issue('route-weight-close', 'warn', [], { name: 'Low Bridge', limit_lb: 30_000, gross_lb: 28_900 }), 't1')
    cautions.add(issue('route-weight-close', 'warn', [], { name: 'Low Bridge', limit_lb: 30_000, gross_lb: 29_600 }), 't2')
    cautions.add(issue('route-weight-close', 'warn', [], { name: 'Low Bridge', limit_lb: 40_000, gross_lb: 38_900 }), 't3')
    const lines = linesOf(cautions)
    expect(lines[0]).toContain('Up to 0.11 mi of narrow road, from Mill Road.')
    expect(lines[1]).toContain('posted at 30,000 lb and the heaviest vehicle on it weighs 29,600 lb')
    expect(lines[2]).toContain('posted at 40,000 lb and the heaviest vehicle on it weighs 38,900 lb')
    expect(lines).toHaveLength(3)
  })

  it('of roads without a name are told apart by their place', () => {
    const cautions = new RoadCautions()
    cautions.add(narrow('', 0.04), 't1')
    cautions.add(narrow('', 0.11), 't2')
    expect(cautions.list()).toHaveLength(2)
  })
})

it.each(['gander-hill', 'school', 'yarrow-bank'] as const)('of the %s plan nothing reads twice, not even with other figures', (name) => {
  const bundle = demoBundle(name)
  const names = namesOf(bundle)
  const { issues } = evaluatePlan(bundle, { quick: true })
  const texts = issueLines(issues, (id) => names.get(id), 'us').map(({ text }) => text)
  expect(texts).toHaveLength(issues.length)
  const heads = texts.map((text) => text.replaceAll(/[\d,.]+/g, '#').replace(/ This concerns .*$/, ''))
  expect(new Set(heads).size).toBe(heads.length)
})
