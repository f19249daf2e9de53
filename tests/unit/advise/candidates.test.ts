import { describe, expect, test } from 'vitest'
import { candidatesOf, type Candidate, type CandidateKind } from '@/lib/advise'
import type { Bundle } from '@/lib/plan'
import { adviceBundle } from '@/tests/fixtures/advice-bundle'

const asIs = (bundle: Bundle) => bundle
const of = (bundle: Bundle, kind: CandidateKind): Candidate[] => candidatesOf(bundle, asIs).filter((one) => one.kind === kind)
const edited = (bundle: Bundle, kind: CandidateKind) => of(bundle, kind).map(({ edits }) => edits[0])

describe('what the equipment allows', () => {
  test('a second suction line is offered where the pumper carries hose for it', () => {
    expect(edited(adviceBundle(), 'suctionLine')).toEqual([
      { kind: 'setFields', collection: 'fillSites', id: 'f1', set: { suction: { size_in: 5, length_ft: 20, lineCount: 2 } } },
    ])
  })

  test('no second suction line where the pumper carries too little', () => {
    const short = adviceBundle(({ district }) => { district.equipment = district.equipment.filter(({ id }) => id !== 'su1').concat([{ id: 'su1', name: 'Suction', kind: 'hardSuction', size_in: 5, section_ft: 10, count: 3, carriedBy: 'p1' }] as never) })
    expect(of(short, 'suctionLine')).toEqual([])
  })

  test('where nothing is said of its suction the line is offered with a proviso', () => {
    const unknown = adviceBundle(({ district }) => {
      district.equipment = district.equipment.filter(({ kind }) => kind !== 'hardSuction')
      district.apparatus = district.apparatus.map((unit) => (unit.id === 'p1' ? { id: 'p1', name: 'Engine 1', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 } : unit)) as typeof district.apparatus
    })
    expect(of(unknown, 'suctionLine').map(({ provisos }) => provisos)).toEqual([['suction-not-listed']])
  })

  test('larger suction and larger hose are those the pumper carries, long enough for the lay', () => {
    expect(of(adviceBundle(), 'suctionSize').map(({ values }) => values['size_in'])).toEqual([6])
    expect(of(adviceBundle(), 'fillLineSize').map(({ values }) => values['size_in'])).toEqual([5])
    const two = adviceBundle(({ plan }) => { plan.fillSites = plan.fillSites.map((site) => ({ ...site, bayCount: 2 })) })
    expect(of(two, 'fillLineSize')).toEqual([])
  })

  test('a second dry hydrant is not built by advice', () => {
    const hydrant = adviceBundle(({ district }) => { district.draftSites = district.draftSites.map((site) => ({ ...site, dryHydrant: { pipe_in: 6, pipe_ft: 40 } })) })
    expect(of(hydrant, 'suctionLine')).toEqual([])
  })

  test('where the fill rate was measured, hose and suction are left alone', () => {
    const measured = adviceBundle(({ plan }) => { plan.fillSites = plan.fillSites.map((site) => ({ ...site, rate_gpm: 700 })) })
    for (const kind of ['suctionLine', 'suctionSize', 'fillLineCount', 'fillLineSize', 'fillPumper', 'swapPumpers'] as const) expect(of(measured, kind)).toEqual([])
    expect(of(measured, 'fillBay').map(({ values }) => values['order'])).toEqual(['together', 'oneAtATime'])
  })

  test('tenders are those the plan does not use, alone and with the tank they carry', () => {
    expect(of(adviceBundle(), 'tender').map(({ subjectIds }) => subjectIds[0])).toEqual(['t3', 't4'])
    expect(of(adviceBundle(), 'tenderWithTank').map(({ edits }) => edits[1])).toEqual([
      { kind: 'setFields', collection: 'dumpSites', id: 'du1', set: { portableTankIds: ['e1', 'e3'] } },
      { kind: 'setFields', collection: 'dumpSites', id: 'du1', set: { portableTankIds: ['e1', 'e4'] } },
    ])
    expect(of(adviceBundle(), 'tender').every(({ provisos }) => provisos.includes('mutual-aid'))).toBe(true)
  })

  test('a portable tank comes with what the plan sends, not from a tender that stays away', () => {
    expect(of(adviceBundle(), 'portableTank').map(({ subjectIds }) => subjectIds[0])).toEqual(['e2'])
  })

  test('the engine at the fire is not sent elsewhere', () => {
    const first = adviceBundle(({ plan }) => { plan.firstDueId = 'p3' })
    const sent = candidatesOf(first, asIs).filter(({ kind }) => kind === 'fillPumper' || kind === 'dumpPumper').map(({ subjectIds }) => subjectIds[0])
    expect(new Set(sent)).toEqual(new Set(['p4']))
  })

  test('moving the fill site takes with it nothing that was measured or noted at the old place', () => {
    const noted = adviceBundle(({ plan }) => { plan.fillSites = plan.fillSites.map((site) => ({ ...site, lift_ft: 12, setUp_s: 200, evidence: { lift_ft: { mark: 'measured' } } })) })
    const [move] = of(noted, 'otherDraftSite').filter(({ subjectIds }) => subjectIds[0] === 'ds2')
    expect(move?.edits.filter(({ kind }) => kind === 'removeItem').map((edit) => 'id' in edit && edit.id)).toEqual(['l1', 'l3'])
    expect(move?.edits.at(-1)).toMatchObject({ set: { lift_ft: null, setUp_s: null, draftSiteId: 'ds2', name: 'Weir' }, evidence: { lift_ft: null } })
  })

  test('a nurse tender is neither sent nor given a portable tank', () => {
    const nursed = adviceBundle(({ plan }) => { plan.dumpSites = plan.dumpSites.map((site) => ({ ...site, nurseId: 't3' })) })
    expect(of(nursed, 'tender').map(({ subjectIds }) => subjectIds[0])).toEqual(['t4'])
    expect([...of(nursed, 'portableTank'), ...of(nursed, 'tenderWithTank')]).toEqual([])
  })

  test('bays that share a pump may fill one at a time, and the other way round', () => {
    expect(of(adviceBundle(), 'bayOrder')).toEqual([])
    const two = (bayOrder?: string) => adviceBundle(({ plan }) => { plan.fillSites = plan.fillSites.map((site) => ({ ...site, bayCount: 2, ...(bayOrder && { bayOrder }) })) })
    expect(of(two(), 'bayOrder').map(({ values }) => values['order'])).toEqual(['oneAtATime'])
    expect(of(two('oneAtATime'), 'bayOrder').map(({ values }) => values['order'])).toEqual(['together'])
  })

  test('soft ground is said', () => {
    const [marsh] = of(adviceBundle(), 'otherDraftSite').filter(({ subjectIds }) => subjectIds[0] === 'ds3')
    expect(marsh?.provisos).toContain('soft-ground')
  })

  test('without road data no other road is named', () => {
    expect(of(adviceBundle(), 'otherRoad')).toEqual([])
  })

  test('ids are told apart, and the same again for the same plan', () => {
    const ids = candidatesOf(adviceBundle(), asIs).map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(candidatesOf(adviceBundle(), asIs).map(({ id }) => id)).toEqual(ids)
  })
})
