import type { District, Edit, EditBody, FieldLog, Plan, SiteEvent } from '@/lib/plan'

export const district = (id = 'D1'): District => ({
  id, name: 'Alder Hollow', stations: [], draftSites: [], hazards: [], roadNotes: [], apparatus: [], equipment: [],
  sources: [
    { id: 'S1', name: 'Mill pond', kind: 'pond', point: { lat: 50, lon: 11 } },
    { id: 'S2', name: 'Alder brook', kind: 'stream', point: { lat: 50.01, lon: 11 } },
  ],
})

export const plan = (id = 'P1', districtId = 'D1'): Plan => ({
  id, name: 'Barn', districtId, dumpSites: [], tenders: [], legNotes: [],
  fillSites: [{ id: 'F1', name: 'Mill pond', point: { lat: 50, lon: 11 }, lift_ft: 10 }],
})

export const log = (id = 'L1', districtId = 'D1'): FieldLog => ({
  format: 'millrace-log', version: 1, id, name: 'Drill at the barn', districtId, date: '2026-03-07', places: [], units: [],
})

/** An event of log L1, its id from a small number. */
export const siteEvent = (number: number, rest: Partial<SiteEvent> = {}): SiteEvent => ({
  id: `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`, logId: 'L1', device: 'phone', post: { kind: 'fill', siteId: 'F1' },
  kind: 'arrived', apparatusId: 'T1', at_ms: Date.UTC(2026, 2, 7, 14, number), entered: 'button', ...rest,
})

/** An edit with a readable id, made on state `base`. */
export const edit = (id: string, base: number, body: EditBody, docId = 'D1'): Edit => ({
  id: `edit-${id}`, docId, base, by: 'A. Tester', at: '2026-01-01T00:00:00.000Z', body,
})

export const setSource = (id: string, set: Record<string, unknown>): EditBody => ({ kind: 'setFields', collection: 'sources', id, set })

export const rename = (name: string): EditBody => ({ kind: 'setFields', set: { name } })
