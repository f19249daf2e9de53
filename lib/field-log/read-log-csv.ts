import Papa from 'papaparse'
import { issue, type Issue } from '../issue'
import { postKinds, siteEventKinds, siteEventSchema, siteEventValues, type SiteEvent } from '../plan'
import { csvColumns, type CsvColumn } from './log-csv'
import type { LogWorld } from './log-world'
import { mergeEvents } from './merge-events'
import { findMoment, findTimeOfDay_s } from './moment-text'
import { idFromText } from './id-from-text'

export type CsvContext = {
  logId: string
  world: Pick<LogWorld, 'units' | 'sites'>
  /** What the log has already: those are not counted as new. */
  known: readonly SiteEvent[]
  /** The moment of a time of day on the day of the log, or on the next after a midnight [ms]. */
  momentOf: (timeOfDay_s: number, after_ms: number | undefined) => number
}

/** What a table would bring, before anything is kept. `issues` empty: all of it can be taken. */
export type ReadCsv = { events: SiteEvent[]; fresh: SiteEvent[]; rowCount: number; issues: Issue[] }

/** More rows than this are no log. */
const MOST_ROWS = 50_000
/** Of many bad rows, so many are named. */
const MOST_ISSUES = 50

/**
 * Reads a table of events, all of it or, where a row cannot be read, nothing: each bad row comes back as an issue that names
 * row and column. Reading twice gives the same events: a row without an id gets one from what it says.
 *
 * @param text comma or semicolon or tab between the fields, as spreadsheets write it; first line the names of the columns
 * @returns issues `log-csv-empty`, `log-csv-column-missing`, `log-csv-column-unknown`, `log-csv-broken`,
 *          `log-csv-too-long`, and of a row `log-csv-not-a-choice`, `log-csv-time`, `log-csv-unknown`, `log-csv-not-a-number`,
 *          `log-csv-unit`, `log-csv-value`, `log-csv-no-value`, `log-csv-note`, `log-csv-field`
 */
export function readLogCsv(text: string, context: CsvContext): ReadCsv {
  const none = (code: string, values: Record<string, number | string> = {}): ReadCsv => ({ events: [], fresh: [], rowCount: 0, issues: [issue(code, 'block', [], values)] })
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: 'greedy', delimitersToGuess: [',', ';', '\t'] })
  const [head, ...rows] = parsed.data
  if (!head || rows.length === 0) return none('log-csv-empty')
  const broken = parsed.errors.find(({ type }) => type === 'Quotes')
  if (broken) return none('log-csv-broken', { row: (broken.row ?? 0) + 1 })
  if (rows.length > MOST_ROWS) return none('log-csv-too-long', { mostCount: MOST_ROWS })
  const names = head.map((name) => name.trim().toLowerCase())
  const unknown = names.find((name) => name !== '' && !csvColumns.some((column) => column === name))
  if (unknown !== undefined) return none('log-csv-column-unknown', { column: unknown.slice(0, 40), columns: csvColumns.join(', ') })
  const missing = (['time', 'post', 'event'] as const).find((column) => !names.includes(column))
  if (missing) return none('log-csv-column-missing', { column: missing })

  const issues: Issue[] = []
  const events: SiteEvent[] = []
  let last_ms: number | undefined
  rows.forEach((fields, index) => {
    const row = (column: CsvColumn) => unescaped(fields[names.indexOf(column)] ?? '')
    const read = eventFromRow(row, context, last_ms)
    if ('code' in read) issues.push({ ...read, values: { ...read.values, row: index + 2 } })
    else {
      last_ms = read.at_ms
      events.push(read)
    }
  })
  const knownIds = new Set(context.known.map(({ id }) => id))
  const all = issues.length > 0 ? [] : mergeEvents(events)
  return { events: all, fresh: all.filter(({ id }) => !knownIds.has(id)), rowCount: rows.length, issues: issues.slice(0, MOST_ISSUES) }
}

/** Takes back the apostrophe that keeps a spreadsheet from reading a formula. */
const unescaped = (field: string): string => field.trim().replace(/^'(?='*[=+\-@\t\r])/, '')

type Row = (column: CsvColumn) => string

const bad = (code: string, column: CsvColumn, values: Record<string, number | string> = {}): Issue => issue(code, 'block', [], { column, ...values })

function eventFromRow(row: Row, { logId, world, momentOf }: CsvContext, last_ms: number | undefined): SiteEvent | Issue {
  const post = choice(row, 'post', postKinds)
  const kind = choice(row, 'event', siteEventKinds)
  const time = timeOf(row('time'), momentOf, last_ms)
  const siteId = itemOf(row, 'site', world.sites)
  const apparatusId = itemOf(row, 'apparatus', world.units)
  if (typeof post === 'object') return post
  if (typeof kind === 'object') return kind
  if (typeof siteId === 'object') return siteId
  if (typeof apparatusId === 'object') return apparatusId
  if (time === undefined) return bad('log-csv-time', 'time', { given: row('time').slice(0, 40) })
  const value = valueOf(row, kind)
  if (typeof value === 'object') return value
  const optional = (name: string, text: string | undefined) => (text === undefined || text === '' ? {} : { [name]: text })
  const event = {
    id: row('id'), logId, device: row('device') || 'table', ...optional('by', row('by')),
    post: { kind: post, ...optional('siteId', siteId) }, kind, ...optional('apparatusId', apparatusId), ...(value !== undefined && { value }), ...optional('note', row('note')),
    at_ms: time, ...(row('made') !== '' && { made_ms: findMoment(row('made')) }), entered: row('entered') || 'import',
    ...optional('replaces', row('replaces')), ...optional('retracts', row('retracts')),
  }
  const checked = siteEventSchema.safeParse({ ...event, id: event.id || idFromText(JSON.stringify(event)) })
  if (checked.success) return checked.data
  const field = String(checked.error.issues[0]?.path[0] ?? 'value')
  if (field === 'note') return bad('log-csv-note', 'note')
  const column = ({ made_ms: 'made', at_ms: 'time', logId: 'id' } as Record<string, CsvColumn>)[field] ?? csvColumns.find((name) => name === field) ?? 'value'
  const rule = siteEventValues[kind]
  if (column === 'value' && !rule) return bad('log-csv-no-value', 'value')
  return column === 'value' && rule ? bad('log-csv-value', 'value', { low: rule.low, high: rule.high, unit: rule.unit }) : bad('log-csv-field', column, { given: row(column).slice(0, 40) })
}

function choice<C extends string>(row: Row, column: CsvColumn, choices: readonly C[]): C | Issue {
  const given = row(column)
  return choices.find((one) => one.toLowerCase() === given.replace(/[\s_-]/g, '').toLowerCase()) ?? bad('log-csv-not-a-choice', column, { given: given.slice(0, 40), choices: choices.join(', ') })
}

function timeOf(text: string, momentOf: CsvContext['momentOf'], last_ms: number | undefined): number | undefined {
  const timeOfDay_s = findTimeOfDay_s(text)
  return timeOfDay_s === undefined ? findMoment(text) : momentOf(timeOfDay_s, last_ms)
}

/** An id, or the name that one item alone has; undefined where the field is empty. */
function itemOf(row: Row, column: 'site' | 'apparatus', items: readonly { id: string; name: string }[]): string | undefined | Issue {
  const given = row(column)
  if (given === '') return undefined
  const byId = items.find(({ id }) => id === given)
  if (byId) return byId.id
  const named = items.filter(({ name }) => name.trim().toLowerCase() === given.toLowerCase())
  const [one] = named
  return one && named.length === 1 ? one.id : bad('log-csv-unknown', column, { given: given.slice(0, 60) })
}

/** Decimal point or comma; the unit, where it is given, must be that of the event. */
function valueOf(row: Row, kind: SiteEvent['kind']): number | undefined | Issue {
  const given = row('value')
  if (given === '') return undefined
  const value = /^-?\d+(?:[.,]\d+)?$/.test(given) ? Number(given.replace(',', '.')) : Number.NaN
  if (!Number.isFinite(value)) return bad('log-csv-not-a-number', 'value', { given: given.slice(0, 40) })
  const unit = siteEventValues[kind]?.unit
  const said = row('unit').toLowerCase()
  return said !== '' && unit !== undefined && said !== unit ? bad('log-csv-unit', 'unit', { given: said.slice(0, 20), unit }) : value
}
