import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, pathsOverlap, type EditBody, type Plan } from '@/lib/plan'
import { smallBundle } from '@/tests/fixtures/bundle'

const plan = smallBundle().plan
const site = (id: string) => ({ id, name: `Site ${id}`, point: { lat: 45, lon: -40 } })
const id = fc.constantFrom('f1', 'f2', 'f3')

const edit: fc.Arbitrary<EditBody> = fc.oneof(
  id.map((id) => ({ kind: 'addItem' as const, collection: 'fillSites', item: site(id) })),
  id.map((id) => ({ kind: 'removeItem' as const, collection: 'fillSites', id })),
  fc.record({ id, lift: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 30 })), mark: fc.constantFrom('measured', 'assumed') }).map(
    ({ id, lift, mark }) => ({ kind: 'setFields' as const, collection: 'fillSites', id, set: { lift_ft: lift }, evidence: { lift_ft: lift === null ? null : { mark } } }),
  ),
  fc.record({ id, lat: fc.integer({ min: -80, max: 80 }) }).map(({ id, lat }) => ({ kind: 'moveSite' as const, collection: 'fillSites', id, point: { lat, lon: 1 } })),
  fc.string({ minLength: 1, maxLength: 20 }).map((name) => ({ kind: 'setFields' as const, set: { name: `n${name}` } })),
)

describe('edits of a plan', () => {
  it('leave the document they were given as it was, and their inverses bring it back', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
        const before = JSON.stringify(plan)
        let doc: Plan = plan
        const inverses: EditBody[] = []
        for (const body of edits) {
          const applied = applyEdit(doc, body)
          if ('code' in applied) continue
          doc = applied.doc
          inverses.unshift(applied.inverse)
        }
        for (const inverse of inverses) {
          const applied = applyEdit(doc, inverse)
          if ('code' in applied) throw new Error(applied.code)
          doc = applied.doc
        }
        expect(JSON.stringify(plan)).toBe(before)
        expect(doc).toEqual(plan)
      }),
    )
  })

  it('do the same whether sent once or twice', () => {
    fc.assert(
      fc.property(edit.filter(({ kind }) => kind !== 'removeItem'), (body) => {
        const once = applyEdit(plan, body)
        if ('code' in once) return
        const twice = applyEdit(once.doc, body)
        expect('code' in twice ? twice : twice.doc).toEqual(once.doc)
      }),
    )
  })

  it('commute when the paths they touch are apart', () => {
    fc.assert(
      fc.property(edit, edit, (a, b) => {
        const first = applyEdit(plan, a)
        const second = applyEdit(plan, b)
        if ('code' in first || 'code' in second) return
        if (first.touches.some((x) => second.touches.some((y) => pathsOverlap(x, y)))) return
        const ab = applyEdit(first.doc, b)
        const ba = applyEdit(second.doc, a)
        if ('code' in ab || 'code' in ba) throw new Error('an edit apart was refused')
        const sorted = (doc: Plan) => ({ ...doc, fillSites: [...doc.fillSites].sort((x, y) => x.id.localeCompare(y.id)) })
        expect(sorted(ab.doc)).toEqual(sorted(ba.doc))
      }),
    )
  })
})
