import { applyEdit, type District, type EditBody, type Plan } from '../plan'
import type { Evidence } from '../evidence'
import type { Measure } from './measure'

/** What an item holds where a measure would go. */
export type Stored = { readonly value?: number | undefined; readonly evidence?: Evidence | undefined }

/** What a measure is of: two with one key measure the same number. */
export const measureKey = ({ doc, itemId, field, fromId = '', toId = '', netPressure_psi }: Measure): string => [doc, itemId, field, fromId, toId, netPressure_psi?.toFixed(0) ?? ''].join('/')

/** Who measured it, when and where it is written, as it will stand with the number. */
export type MeasuredBy = { readonly by?: string | undefined; readonly on: string; readonly source: string }

/**
 * A measure as an edit like any other: the number with its evidence, undone like any other.
 *
 * @param newId id of a note that has to be made for a way
 * @returns undefined where the item is no longer in the document
 */
export function takeMeasure(doc: District | Plan, measure: Measure, { by, on, source }: MeasuredBy, newId: string): EditBody | undefined {
  const evidence: Evidence = { mark: 'measured', on, source, spreadShare: measure.spreadShare, ...(by && { by }) }
  const { collection, itemId, field } = measure
  const value = rounded(measure.value)
  if (collection === 'legNotes') {
    if (!('legNotes' in doc)) return undefined
    const note = findNote(doc, measure)
    return note
      ? { kind: 'setFields', collection, id: note.id, set: { travel_s: value }, evidence: { travel_s: evidence } }
      : { kind: 'addItem', collection, item: { id: newId, fromId: measure.fromId, toId: measure.toId, apparatusId: itemId, travel_s: value, evidence: { travel_s: evidence } } }
  }
  const item = findItem(doc, measure)
  if (!item) return undefined
  if (field === 'curvePoints') {
    const points = 'curvePoints' in item ? item.curvePoints ?? [] : []
    return { kind: 'setFields', collection, id: item.id, set: { curvePoints: [...points, { netPressure_psi: rounded(measure.netPressure_psi ?? 0), flow_gpm: value, testedOn: on }] } }
  }
  return { kind: 'setFields', collection, id: item.id, set: { [field]: value }, evidence: { [field]: evidence } }
}

type Docs = { readonly district: District | undefined; readonly plan: Plan | undefined }

/**
 * Several measures as one act: edits for each document, in order. Points of a pump's own test are left out: whether it was run wide open
 * only who was there can say, one by one.
 */
export function takeMeasures({ district, plan }: Docs, measures: readonly Measure[], sourceOf: (measure: Measure) => MeasuredBy, newId: () => string): { doc: District | Plan; bodies: EditBody[] }[] {
  return [district, plan].flatMap((doc) => {
    if (!doc) return []
    const bodies: EditBody[] = []
    let after: District | Plan = doc
    for (const measure of measures) {
      if (measure.field === 'curvePoints' || (measure.doc === 'district') !== (doc === district)) continue
      const body = takeMeasure(after, measure, sourceOf(measure), newId())
      const applied = body && applyEdit(after, body)
      if (!body || !applied || 'code' in applied) continue
      bodies.push(body)
      after = applied.doc
    }
    return bodies.length > 0 ? [{ doc, bodies }] : []
  })
}

/** A number that somebody has measured and that this measure would leave as it reads. */
export const saysTheSame = ({ value, evidence }: Stored, measure: Measure): boolean =>
  value !== undefined && evidence?.mark === 'measured' && Math.round(value) === Math.round(measure.value)

/** What stands there now. */
export function storedFor(doc: District | Plan, measure: Measure): Stored {
  const item = measure.collection === 'legNotes' ? ('legNotes' in doc ? findNote(doc, measure) : undefined) : findItem(doc, measure)
  if (!item || measure.field === 'curvePoints') return {}
  const value = (item as unknown as Readonly<Record<string, unknown>>)[measure.field]
  return { ...(typeof value === 'number' && { value }), ...(item.evidence?.[measure.field] && { evidence: item.evidence[measure.field] }) }
}

/** Whether a document has a place for a measure that does not hold it yet: its item, for a way both ends. */
export function canTake(doc: District | Plan | undefined, measure: Measure): boolean {
  if (!doc) return false
  if (measure.collection !== 'legNotes') {
    const item = findItem(doc, measure)
    return item !== undefined && !(measure.field === 'curvePoints' && hasPoint(item, measure))
  }
  return 'legNotes' in doc && [measure.fromId, measure.toId].every((id) => [...doc.fillSites, ...doc.dumpSites].some((site) => site.id === id))
}

const hasPoint = (item: object, measure: Measure): boolean => 'curvePoints' in item && Array.isArray(item.curvePoints)
  && (item.curvePoints as { netPressure_psi: number; flow_gpm: number }[]).some((point) => point.flow_gpm === rounded(measure.value) && point.netPressure_psi === rounded(measure.netPressure_psi ?? 0))

const findNote = (plan: Plan, { fromId, toId, itemId }: Measure) => plan.legNotes.find((note) => note.fromId === fromId && note.toId === toId && note.apparatusId === itemId)

function findItem(doc: District | Plan, { collection, itemId }: Measure) {
  if (collection === 'apparatus') return 'apparatus' in doc ? doc.apparatus.find(({ id }) => id === itemId) : undefined
  return 'fillSites' in doc ? doc.fillSites.find(({ id }) => id === itemId) : undefined
}

/** Nobody stops a watch closer than this. */
const rounded = (value: number): number => Math.round(value * 10) / 10
