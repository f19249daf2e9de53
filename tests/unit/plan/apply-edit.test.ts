import { describe, expect, it } from 'vitest'
import { applyEdit } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const { plan, district } = smallBundle()

describe('an edit', () => {
  it('reports the paths it touched', () => {
    expect(applyEdit(plan, { kind: 'setFields', collection: 'fillSites', id: 'f1', set: { bayCount: 2 }, evidence: { lift_ft: { mark: 'measured' } } }))
      .toMatchObject({ touches: ['fillSites/f1/bayCount', 'fillSites/f1/lift_ft'] })
    expect(applyEdit(district, { kind: 'removeItem', collection: 'apparatus', id: 't1' })).toMatchObject({ touches: ['apparatus/t1'] })
    expect(applyEdit(plan, { kind: 'setFields', set: { duration_s: 3600 } })).toMatchObject({ touches: ['duration_s'] })
  })

  it('is refused with the place and the rule when the document cannot hold it', () => {
    expect(applyEdit(plan, { kind: 'setFields', collection: 'fillSites', id: 'f1', set: { lift_ft: -99 } })).toMatchObject({ code: 'input-too-small', subjectIds: ['f1'] })
    expect(applyEdit(plan, { kind: 'setFields', collection: 'fillSites', id: 'nowhere', set: {} })).toMatchObject({ code: 'edit-item-missing' })
    expect(applyEdit(plan, { kind: 'removeItem', collection: 'castles', id: 'f1' })).toMatchObject({ code: 'edit-list-missing' })
    expect(applyEdit(plan, { kind: 'setFields', collection: 'fillSites', id: 'f1', set: { id: 'f9' } })).toMatchObject({ code: 'edit-field-fixed' })
    expect(applyEdit(plan, { kind: 'setFields', set: { fillSites: [] } })).toMatchObject({ code: 'edit-field-fixed' })
  })

  it('puts a removed item back where it stood', () => {
    const removed = applyEdit(district, { kind: 'removeItem', collection: 'apparatus', id: 'p2' })
    if ('code' in removed) throw new Error(removed.code)
    const back = applyEdit(removed.doc, removed.inverse)
    expect('code' in back ? back : back.doc).toEqual(district)
  })
})
