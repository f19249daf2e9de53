import { documentKindOf, type EditableDocument } from '@/lib/plan'
import { mayEdit, type DistrictScope, type SeatScope } from '../../_devices/scope'
import { dataNamedBy } from '../archive/archive-form'
import { docOf } from '../documents'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import type { Grant } from '../../_devices/devices'
import type { Viewer } from './viewer'

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE'

/**
 * Who may use a part of the API:
 * - `anyone`: also a device that has not joined; `holder`: every device that has; `station`: none;
 * - `read-document`, `edit-document`: a document that the scope holds; `edit-plan`: one of them, but not the district;
 * - `read-data`: data that the scope's district names; `add-data`, `create`: with the right to edit, checked again where
 *   the content is known;
 * - `seat`: a device at a seat of an exercise, for its own seat; it has no other rule than this one.
 */
export type Rule = 'anyone' | 'holder' | 'station' | 'seat' | 'read-document' | 'edit-document' | 'edit-plan' | 'read-data' | 'add-data' | 'create'

/** Every part of the API. What is not here is for the station alone, and a test fails until it is. */
export const RULES: Readonly<Record<string, Partial<Record<Method, Rule>>>> = {
  '/api/health': { GET: 'holder' },
  '/api/join': { POST: 'anyone' },
  '/api/documents': { GET: 'holder', POST: 'create' },
  '/api/documents/[id]': { GET: 'read-document', DELETE: 'edit-plan' },
  '/api/documents/[id]/edits': { GET: 'read-document', POST: 'edit-document' },
  '/api/documents/[id]/events': { GET: 'read-document', POST: 'edit-document' },
  '/api/documents/[id]/restore': { POST: 'edit-plan' },
  '/api/documents/[id]/live': { GET: 'read-document' },
  '/api/seat/live': { GET: 'seat' },
  '/api/seat/acts': { POST: 'seat' },
  '/api/seat/map': { GET: 'seat' },
  '/api/blobs/[hash]': { GET: 'read-data', PUT: 'add-data' },
  '/api/districts/[id]/archive': { GET: 'station' },
  '/api/archives': { POST: 'station' },
  '/api/devices': { GET: 'station', PUT: 'station' },
  '/api/devices/codes': { POST: 'station', DELETE: 'station' },
  '/api/devices/grants/[id]': { DELETE: 'station', PUT: 'station' },
}

const PATTERNS = Object.entries(RULES).map(([route, rules]) => ({ rules, pattern: new RegExp(`^${route.replace(/\[\w+\]/g, '([^/]+)')}/?$`) }))

/** The rule of a request, and the id or hash in its path. */
export function ruleOf(method: string, path: string): { rule: Rule; key: string } {
  const asked = (method === 'HEAD' ? 'GET' : method) as Method
  for (const { pattern, rules } of PATTERNS) {
    const found = pattern.exec(path)
    if (found) return { rule: rules[asked] ?? 'station', key: found[1] ?? '' }
  }
  return { rule: 'station', key: '' }
}

const beyond = () => refusal('beyond-grant')

/**
 * Lets a request through, or not, before any work is done for it. What lies outside a grant is answered like what does
 * not exist.
 *
 * @throws Refusal
 */
export async function requireAccess(viewer: Viewer, method: string, path: string, open: () => Promise<Database>): Promise<void> {
  const { rule, key: raw } = ruleOf(method, path)
  if (rule === 'seat' || viewer.kind === 'seat') {
    if (rule === 'seat' && viewer.kind === 'seat') return
    throw viewer.kind === 'seat' ? beyond() : refusal(viewer.kind === 'station' ? 'no-seat' : 'join-first')
  }
  if (viewer.kind === 'station' || rule === 'anyone') return
  if (viewer.kind === 'nobody') throw refusal('join-first')
  const { scope } = viewer.grant
  if (rule === 'holder') return
  if (rule === 'station') throw beyond()
  const isEdit = rule !== 'read-document' && rule !== 'read-data'
  if (isEdit && !mayEdit(scope)) throw refusal('read-only')
  if (rule === 'add-data' || rule === 'create') return
  const key = decoded(raw)
  if (rule === 'read-data') {
    if (!(await isDataOf(await open(), scope, key))) throw refusal('not-found', { thing: 'data' }, 'hash')
    return
  }
  if (!(await isWithin(await open(), scope, key))) throw refusal('not-found', { thing: 'document' }, 'id')
  if (rule === 'edit-plan' && key === scope.districtId) throw beyond()
}

/** The path's own spelling of an id; one that is none of ours belongs to nothing. */
function decoded(key: string): string {
  try {
    return decodeURIComponent(key)
  } catch {
    return ''
  }
}

const isOf = (scope: DistrictScope, entry: { id: string; districtId?: string | null | undefined }): boolean => entry.id === scope.districtId || entry.districtId === scope.districtId

async function isWithin(database: Database, scope: DistrictScope, id: string): Promise<boolean> {
  const row = await database.document.findUnique({ where: { id }, select: { id: true, districtId: true } })
  return row !== null && isOf(scope, row)
}

/** Data belongs to a district while its document names it. */
async function isDataOf(database: Database, scope: DistrictScope, hash: string): Promise<boolean> {
  const row = await database.document.findUnique({ where: { id: scope.districtId }, select: { body: true } })
  return row !== null && dataNamedBy(docOf(row)).some((one) => one.hash === hash)
}

/** Of a list, what a viewer may know of. */
export const withinReach = <T extends { id: string; districtId?: string }>(viewer: Viewer, entries: readonly T[]): T[] =>
  entries.filter((entry) => viewer.kind === 'station' || (viewer.kind === 'device' && isOf(viewer.grant.scope, entry)))

/** @throws Refusal if a viewer may not bring this document in: from a device come only plans, exercises and logs of its own district. */
export function requireCreation(viewer: Viewer, doc: EditableDocument): void {
  if (viewer.kind === 'station') return
  const isOwn = viewer.kind === 'device' && mayEdit(viewer.grant.scope) && documentKindOf(doc) !== 'district' && doc.districtId === viewer.grant.scope.districtId
  if (!isOwn) throw beyond()
}

/** The seat of a viewer that passed the rule `seat`. @throws Refusal if it has none */
export function requireSeatGrant(viewer: Viewer): Grant<SeatScope> {
  if (viewer.kind !== 'seat') throw refusal('no-seat')
  return viewer.grant
}
