import type { Evidence } from '@/lib/evidence'
import type { EditBody, Resource } from '@/lib/plan'
import { say } from '../_text'
import '../_text/areas/resources'

/** What was measured on this one vehicle, and is no figure of another. */
const ownTests = ['testPoints', 'curvePoints']

/**
 * The edit that adds a copy. What was measured on the first is only assumed of the copy, and its tests stay with it.
 */
export function copyEdit({ list, item }: Resource, newId: string): EditBody & { kind: 'addItem' } {
  const from = say('resources.copied-from', { name: item.name })
  const evidence = Object.fromEntries(Object.entries(item.evidence ?? {}).map(([field, known]): [string, Evidence] => {
    if (known.mark !== 'measured') return [field, known]
    return [field, { mark: 'assumed', source: from, ...(known.entered !== undefined && { entered: known.entered }) }]
  }))
  const kept = Object.fromEntries(Object.entries(item).filter(([field]) => !ownTests.includes(field)))
  return {
    kind: 'addItem', collection: list,
    item: { ...kept, id: newId, name: say('resources.copy-name', { name: item.name }).slice(0, 120), ...(Object.keys(evidence).length > 0 && { evidence }) },
  }
}
