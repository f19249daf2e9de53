import { expect, it } from 'vitest'
import type { DocumentEntry } from '@/app/_client'
import { putAwayOf } from '@/app/_frame/put-away'

const entry = (id: string, kind: DocumentEntry['kind'], districtId?: string, deletedAt?: string): DocumentEntry =>
  ({ id, kind, name: id, sequence: 0, ...(districtId !== undefined && { districtId }), ...(deletedAt !== undefined && { deletedAt }) })

const all = [
  entry('valley', 'district'), entry('hills', 'district', undefined, '2026-03-02'),
  entry('mill', 'plan', 'valley'), entry('barn', 'plan', 'valley', '2026-03-01'), entry('drill', 'exercise', 'valley', '2026-03-03'), entry('farm', 'plan', 'hills', '2026-03-01'),
]
const idsOf = (districtId?: string) => putAwayOf(all, districtId).map(({ id }) => id)

it('lists what was put away, last first, and what belongs to a district put away comes back with it', () => {
  expect(idsOf()).toEqual(['drill', 'hills', 'barn'])
  expect(idsOf('valley')).toEqual(['drill', 'barn'])
  expect(idsOf('hills')).toEqual([])
})
