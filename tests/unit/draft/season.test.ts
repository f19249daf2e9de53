import { describe, expect, it } from 'vitest'
import { evaluatePlan, sourceGaps, type SupplyResult } from '@/lib/supply'
import { seasonDrop } from '@/lib/supply/season'
import { findStreamFlow_gpm, sourceWater } from '@/lib/supply/source'
import type { Source } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const pond: Source = { id: 'so1', name: 'Pond', kind: 'pond', point: { lat: 45, lon: -40 }, surface_sqft: 43_560, usableDepth_ft: 3, seasonalDrop_ft: 1, droughtDrop_ft: 4 }
const fill = (result: SupplyResult) => result.sites.flatMap((site) => (site.kind === 'fillSite' ? [site] : []))[0]

describe('the fall of a surface in a season', () => {
  it('is nothing in the usual season, the dry one, or the greater of both in a drought', () => {
    expect(seasonDrop(pond, 'usual').drop_ft).toBe(0)
    expect(seasonDrop(pond, 'dry').drop_ft).toBe(1)
    expect(seasonDrop(pond, 'drought').drop_ft).toBe(4)
    expect(seasonDrop({ ...pond, droughtDrop_ft: 0.5 }, 'drought').drop_ft).toBe(1)
  })

  it('says so where nobody has said how far it falls, and counts what is known', () => {
    const unknown = seasonDrop({ ...pond, droughtDrop_ft: undefined }, 'drought')
    expect(unknown).toMatchObject({ season: 'drought', counted: 'dry', drop_ft: 1, issues: [{ code: 'season-drop-missing', severity: 'warn', values: { season: 'drought', counted: 'dry', drop_ft: 1 } }] })
    expect(seasonDrop({ ...pond, droughtDrop_ft: undefined, seasonalDrop_ft: undefined }, 'drought')).toMatchObject({ counted: 'usual', drop_ft: 0, issues: [{ code: 'season-drop-missing' }] })
    expect(seasonDrop(pond, 'drought')).toMatchObject({ counted: 'drought', issues: [] })
    expect(seasonDrop({ ...pond, inflow_gpm: 300 }, 'dry').issues.map(({ code }) => code)).toEqual(['season-inflow-usual'])
  })

  it('does not touch the water of a main', () => {
    expect(seasonDrop({ ...pond, kind: 'pressureHydrant' }, 'drought')).toEqual({ season: 'drought', counted: 'usual', drop_ft: 0, issues: [] })
  })

  it('asks nobody how far a cistern falls', () => {
    const cistern: Source = { ...pond, kind: 'cistern', seasonalDrop_ft: undefined, droughtDrop_ft: undefined }
    for (const season of [undefined, 'usual', 'dry', 'drought'] as const) expect(seasonDrop(cistern, season)).toMatchObject({ drop_ft: 0, issues: [] })
  })
})

describe('the season of a plan that says none', () => {
  it('is the dry one where its fall is known, for the smaller promise', () => {
    expect(seasonDrop(pond)).toEqual({ season: 'dry', counted: 'dry', drop_ft: 1, issues: [] })
  })

  it('is the usual one where no fall is recorded, and the fall is a thing to find out', () => {
    expect(seasonDrop({ ...pond, seasonalDrop_ft: undefined })).toMatchObject({ season: 'usual', drop_ft: 0, issues: [{ code: 'source-fall-unknown', severity: 'note', subjectIds: ['so1'] }] })
    expect(seasonDrop({ ...pond, seasonalDrop_ft: undefined }, 'usual').issues).toEqual([])
  })
})

describe('usable water in a season', () => {
  // One acre a foot deep is 325,851 gal (by hand: 43,560 cu ft of 7.4805 gal).
  it('is surface times what is left of the usable depth', () => {
    expect(sourceWater(pond).usable_gal).toBeCloseTo(3 * 325_851, -1)
    expect(sourceWater(pond, seasonDrop(pond, 'dry')).usable_gal).toBeCloseTo(2 * 325_851, -1)
  })

  it('is an entered volume less surface times fall', () => {
    const entered = { ...pond, usable_gal: 700_000 }
    expect(sourceWater(entered, seasonDrop(entered, 'dry')).usable_gal).toBeCloseTo(700_000 - 325_851, -1)
  })

  it('is nothing, said so, where the surface falls to the strainer', () => {
    const water = sourceWater(pond, seasonDrop(pond, 'drought'))
    expect(water.usable_gal).toBe(0)
    expect(water.issues.map(({ code }) => code)).toEqual(['season-strainer-bare'])
  })

  it('says when a fall takes nothing off a volume because no surface is known', () => {
    const cistern = { ...pond, kind: 'cistern' as const, surface_sqft: undefined, usable_gal: 30_000 }
    expect(sourceWater(cistern, seasonDrop(cistern, 'dry'))).toMatchObject({ usable_gal: 30_000, issues: [{ code: 'season-volume-usual' }] })
  })
})

describe('water that nobody has measured', () => {
  const unknown: Source = { ...pond, surface_sqft: undefined }

  it.each([['pond', 'warn'], ['cistern', 'warn'], ['dryHydrant', 'warn'], ['lake', 'note']] as const)('of a %s is a thing to find out: it is counted as never running out', (kind, severity) => {
    expect(sourceWater({ ...unknown, kind })).toEqual({ issues: [{ code: 'source-volume-unknown', severity, subjectIds: ['so1'], values: {} }] })
  })

  it('of a stream is what it carries', () => {
    expect(sourceWater({ ...unknown, kind: 'stream' }).issues).toMatchObject([{ code: 'source-flow-unknown' }])
    expect(sourceWater({ ...unknown, kind: 'stream', inflow_gpm: 900 }).issues).toEqual([])
  })

  it('is not asked of what is known or of a main', () => {
    expect(sourceWater(pond).issues).toEqual([])
    expect(sourceWater({ ...unknown, usable_gal: 40_000 }).issues).toEqual([])
    expect(sourceWater({ ...unknown, kind: 'pressureHydrant' }).issues).toEqual([])
  })

  it('and a fall that nobody has recorded are the things to find out of a source', () => {
    expect(sourceGaps({ ...unknown, seasonalDrop_ft: undefined })).toEqual(['volume', 'dryFall'])
    expect(sourceGaps({ ...unknown, kind: 'stream', droughtDrop_ft: undefined })).toEqual(['flow', 'droughtFall'])
    expect(sourceGaps({ ...unknown, kind: 'cistern', seasonalDrop_ft: undefined, droughtDrop_ft: undefined })).toEqual(['volume'])
    expect(sourceGaps({ ...unknown, kind: 'pressureHydrant' })).toEqual(['test'])
    expect(sourceGaps(pond)).toEqual([])
  })

  it('stands among what to look at in the answer of a plan', () => {
    const codes = (changes: Readonly<Record<string, unknown>>) => evaluatePlan(smallBundle(changes), { quick: true }).issues.map(({ code }) => code)
    expect(codes({})).toEqual(expect.arrayContaining(['source-volume-unknown', 'source-fall-unknown']))
    const known = codes({ 'district.sources.0.surface_sqft': 30_000, 'district.sources.0.usableDepth_ft': 4, 'district.sources.0.seasonalDrop_ft': 2 })
    expect(known).not.toContain('source-volume-unknown')
    expect(known).not.toContain('source-fall-unknown')
  })
})

describe('a stream', () => {
  const stream: Source = { id: 's', name: 'Stream', kind: 'stream', point: { lat: 45, lon: -40 }, streamWidth_ft: 20, streamDepth_ft: 2, floatReach_ft: 100, float_s: 100, seasonalDrop_ft: 1 }

  // USBR float table (from memory): 0.68 at 2 ft, 0.66 at 1 ft. By hand: 0.68 · 1 ft/s · 40 sq ft · 448.83 gpm/cfs.
  it('flows by the float method', () => {
    expect(findStreamFlow_gpm(stream)).toBeCloseTo(0.68 * 40 * 448.831, 0)
  })

  // Manning's formula for a wide channel: speed as depth^(2/3), so half the depth carries 0.5^(5/3) = 0.315, by 0.66/0.68 for the factor.
  it('at half its depth carries less than a third', () => {
    expect((findStreamFlow_gpm(stream, 1) ?? 0) / (findStreamFlow_gpm(stream) ?? 1)).toBeCloseTo(0.31498 * (0.66 / 0.68), 4)
  })

  it('that falls by all its depth carries nothing', () => {
    expect(findStreamFlow_gpm(stream, 2)).toBe(0)
  })
})

describe('a plan in a season', () => {
  const base = { 'district.sources.0.surface_sqft': 30_000, 'district.sources.0.usableDepth_ft': 4, 'district.sources.0.seasonalDrop_ft': 2, 'district.sources.0.droughtDrop_ft': 12 }

  it('lifts by the fall of the surface more', () => {
    expect(fill(evaluatePlan(smallBundle({ ...base, 'plan.season': 'usual' }), { quick: true }))?.lift_ft).toBe(10)
    const dry = evaluatePlan(smallBundle({ ...base, 'plan.season': 'dry' }), { quick: true })
    expect(fill(dry)?.lift_ft).toBe(12)
    expect(fill(dry)?.draft_gpm).toBeLessThan(fill(evaluatePlan(smallBundle({ ...base, 'plan.season': 'usual' }), { quick: true }))?.draft_gpm ?? 0)
  })

  it('adds the fall to a lift entered in the plan too', () => {
    expect(fill(evaluatePlan(smallBundle({ ...base, 'plan.season': 'dry', 'plan.fillSites.0.lift_ft': 7 }), { quick: true }))?.lift_ft).toBe(9)
  })

  it('runs dry in a drought and says when', () => {
    const result = evaluatePlan(smallBundle({ ...base, 'plan.season': 'drought', 'district.sources.0.droughtDrop_ft': 3.98 }), { quick: true })
    const empty = result.issues.find(({ code }) => code === 'source-empty')
    // 30,000 sq ft · 0.02 ft is 4,488 gal: three loads of 1,800 empty it, and none can before the first tender has come.
    expect(empty?.subjectIds).toEqual(['f1'])
    expect(empty?.values.from_s).toBeGreaterThan(0)
    expect(empty?.values.drawn_gal).toBeCloseTo(30_000 * 0.02 * 7.48052, 0)
  })
})
