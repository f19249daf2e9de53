import { describe, expect, it } from 'vitest'
import { compilePlan, evaluatePlan, supplyChart } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

describe('the chain from source to fire ground', () => {
  it('has a capacity for each part that a person can work out', () => {
    const { chain, sites, hand_gpm } = evaluatePlan(smallBundle())
    // Fill: 1,800 gal in 60 + 118.8 + 30 s. Dump: 1,800 gal in 75 + 108 + 30 s. Two like tenders pass as one.
    expect(chain.map(({ part }) => part)).toEqual(['source', 'fill', 'road', 'dump', 'fireGround'])
    expect(chain[0]?.capacity_gpm).toBe(sites.flatMap((site) => (site.kind === 'fillSite' ? [site.draft_gpm] : []))[0])
    expect(chain[1]?.capacity_gpm).toBeCloseTo(1800 / (208.8 / 60), 4)
    expect(chain[2]?.capacity_gpm).toBeCloseTo(hand_gpm ?? 0, 4)
    expect(chain[3]?.capacity_gpm).toBeCloseTo(1800 / (213 / 60), 4)
  })

  it('does not know what the source could give where no water is named', () => {
    const { chain } = evaluatePlan(smallBundle({ 'plan.fillSites.0.draftSiteId': undefined }), { quick: true })
    expect(chain.map(({ capacity_gpm }) => capacity_gpm === null)).toEqual([true, false, false, false, false])
  })

  it('is never narrower than what is hauled through it', () => {
    const { chain, hauledCapacity_gpm } = evaluatePlan(smallBundle())
    for (const part of chain.slice(1, 4)) expect(part.capacity_gpm).toBeGreaterThanOrEqual((hauledCapacity_gpm ?? Infinity) - 1e-6)
  })
})

describe('the chart of a run', () => {
  it('has every tender’s line without gaps and tank levels within the tank', () => {
    const chart = supplyChart(compilePlan(smallBundle()))
    expect(chart?.tenders).toHaveLength(2)
    for (const { segments } of chart?.tenders ?? [])
      segments.slice(1).forEach((segment, index) => expect(segment.from_s).toBe(segments[index]?.to_s))
    for (const { capacity_gal, levels } of chart?.tanks ?? [])
      for (const { level_gal } of levels) expect(level_gal >= 0 && level_gal <= capacity_gal + 1e-6).toBe(true)
  })
})
