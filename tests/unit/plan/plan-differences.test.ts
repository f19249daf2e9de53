import { describe, expect, it } from 'vitest'
import { planDifferences } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const plan = (changes: Parameters<typeof smallBundle>[0] = {}) => smallBundle(changes).plan

describe('where plans differ', () => {
  it('is nowhere between a plan and its copy under another name', () => {
    expect(planDifferences([plan(), plan({ 'plan.name': 'Another', 'plan.id': 'pl2', 'plan.notes': 'seen', 'plan.fillSites.0.name': 'Pond' })])).toEqual([])
    expect(planDifferences([plan()])).toEqual([])
  })

  it('is each field with what each plan says, absent where one says nothing', () => {
    expect(planDifferences([plan(), plan({ 'plan.fillSites.0.bayCount': 2, 'plan.fillSites.0.suction': { size_in: 6, length_ft: 20 } })])).toEqual([
      { part: 'fillSites', place: 1, field: 'suction.size_in', values: [undefined, 6] },
      { part: 'fillSites', place: 1, field: 'suction.length_ft', values: [undefined, 20] },
      { part: 'fillSites', place: 1, field: 'bayCount', values: [undefined, 2] },
    ])
  })

  it('counts tenders as a set, whatever their order', () => {
    const [first, second] = plan().tenders
    expect(planDifferences([plan(), plan({ 'plan.tenders': [second, first] })])).toEqual([])
    expect(planDifferences([plan(), plan({ 'plan.tenders': [first] })])).toEqual([{ part: 'tenders', field: 'tenderIds', values: [['t1', 't2'], ['t1']] }])
  })

  it('names the ends of a way and follows the order of the chain', () => {
    const found = planDifferences([plan(), plan({ 'plan.legNotes.0.distance_mi': 4, 'plan.dumpSites.0.positionCount': 2, 'plan.season': 'drought' })])
    expect(found.map(({ part, field }) => `${part} ${field}`)).toEqual(['plan season', 'dumpSites positionCount', 'legNotes distance_mi'])
    expect(found[2]).toMatchObject({ itemIds: ['du1', 'f1'], values: [2, 4] })
  })
})
