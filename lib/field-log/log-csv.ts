import Papa from 'papaparse'
import { siteEventValues, type SiteEvent } from '../plan'
import type { LogWorld } from './log-world'
import { isoFromMoment } from './moment-text'

/** Columns of the table of events, in order. Whoever writes one by hand needs `time`, `post` and `event`; the rest may be absent. */
export const csvColumns = ['time', 'post', 'site', 'event', 'apparatus', 'value', 'unit', 'note', 'by', 'device', 'entered', 'made', 'id', 'replaces', 'retracts'] as const
export type CsvColumn = (typeof csvColumns)[number]

/**
 * The events of a log as a table: all of them, corrected and undone ones too, so that what is read back is the same set. A
 * text that a spreadsheet would take for a formula is written with an apostrophe before it.
 *
 * @returns RFC 4180: commas, CRLF, names of sites and apparatus where they say the same as their ids
 */
export function logCsv(events: readonly SiteEvent[], world: Pick<LogWorld, 'units' | 'sites'>): string {
  const nameOf = (items: readonly { id: string; name: string }[], id: string | undefined) => {
    const found = items.find((one) => one.id === id)
    return found && items.filter(({ name }) => name === found.name).length === 1 ? found.name : (id ?? '')
  }
  const rows = events.map((event): Record<CsvColumn, string> => ({
    time: isoFromMoment(event.at_ms),
    post: event.post.kind,
    site: nameOf(world.sites, event.post.siteId),
    event: event.kind,
    apparatus: nameOf(world.units, event.apparatusId),
    value: event.value === undefined ? '' : String(event.value),
    unit: event.value === undefined ? '' : (siteEventValues[event.kind]?.unit ?? ''),
    note: event.note ?? '',
    by: event.by ?? '',
    device: event.device,
    entered: event.entered,
    made: event.made_ms === undefined ? '' : isoFromMoment(event.made_ms),
    id: event.id,
    replaces: event.replaces ?? '',
    retracts: event.retracts ?? '',
  }))
  return `${Papa.unparse({ fields: [...csvColumns], data: rows.map((row) => csvColumns.map((column) => row[column])) }, { newline: '\r\n', escapeFormulae: /^'*[=+\-@\t\r]/ })}\r\n`
}
