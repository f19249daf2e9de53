import { describe, expect, it } from 'vitest'
import { sitePumper } from '@/app/_draft/site-pumper'
import type { DraftingPump, Plan } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const { district, plan } = smallBundle()
const pumps = district.apparatus.filter((one): one is DraftingPump => one.kind !== 'tender')
const elsewhere: Plan = { ...plan, fillSites: plan.fillSites.map((site) => ({ ...site, draftSiteId: 'other' })) } as Plan
const second: Plan = { ...plan, name: 'By the second engine', fillSites: plan.fillSites.map((site) => ({ ...site, pumperId: 'p2' })) } as Plan
const of = (given: Partial<Parameters<typeof sitePumper>[0]>) => sitePumper({ pumps, draftSiteId: 'ds1', ...given })

describe('the pumper of a draft site’s sheet', () => {
  it('is the one asked for, whatever the plans say', () => {
    expect(of({ askedId: 'p2', plan })).toMatchObject({ pump: { id: 'p2' }, from: 'asked' })
  })

  it('is that of the plan it was opened from', () => {
    expect(of({ plan: second, others: [plan] })).toMatchObject({ pump: { id: 'p2' }, from: 'plan', planName: 'By the second engine' })
  })

  it('is that of another plan that fills here, where it was opened from none or from one that fills elsewhere', () => {
    expect(of({ others: [elsewhere, second] })).toMatchObject({ pump: { id: 'p2' }, from: 'plan', planName: 'By the second engine' })
    expect(of({ plan: elsewhere, others: [second] })).toMatchObject({ pump: { id: 'p2' }, from: 'plan' })
  })

  it('is the first rated pumper where no plan names one, and says so; never a portable pump while there is a pumper', () => {
    const portable = { id: 'pp', name: 'Portable', kind: 'portablePump', rated_gpm: 250 } as DraftingPump
    const unrated = { ...pumps[0], id: 'p0', rated_gpm: undefined } as DraftingPump
    expect(of({ pumps: [portable, unrated, ...pumps], others: [elsewhere] })).toMatchObject({ pump: { id: 'p1' }, from: 'first' })
    expect(of({ pumps: [portable] })).toMatchObject({ pump: { id: 'pp' }, from: 'first' })
    expect(of({ pumps: [] })).toEqual({ pump: undefined, from: 'first' })
  })
})
