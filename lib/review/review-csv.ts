import type { LogReview } from './review-log'

/** Names of the items a review speaks of, by id. */
export type NamesOf = (id: string) => string | undefined

/**
 * A review as a table for a spreadsheet: first its figures, then every load, then what was assumed. RFC 4180, one header a part.
 *
 * @param names of tenders and sites
 */
export function reviewCsv(review: LogReview, names: NamesOf): string {
  const { difference, loads, assumptions, steady, own } = review
  const named = (id: string | undefined) => (id === undefined ? '' : names(id) ?? id)
  const figures: Row[] = [
    ['figure', 'value', 'unit'],
    ['achieved', review.achieved_gpm, 'gpm'], ['planned', review.planned_gpm, 'gpm'], ['needed', review.needed_gpm, 'gpm'], ['held', review.held_gpm, 'gpm'],
    ['compared from', review.window?.from_s, 's'], ['compared to', review.window?.end_s, 's'],
    ...(difference?.parts ?? []).map(({ cause, gpm }): Row => [`difference: ${cause}`, gpm, 'gpm']),
    ...(difference ? [['difference: unexplained', difference.unexplained_gpm, 'gpm'], ['log surer than', difference.bound_gpm, 'gpm']] satisfies Row[] : []),
    ...([['steady', steady], ['own', own]] as const).flatMap(([name, shown]): Row[] => (shown ? [[`criterion ${name}`, shown.verdict, ''], [`criterion ${name} fails`, shown.fails_s, 's']] : [])),
  ]
  const parts: Row[][] = [
    figures,
    [['tender', 'site', 'dump began_s', 'dump ended_s', 'given_gal', 'in the tank_gal', 'taken for granted'], ...loads.map((load): Row => [named(load.tenderId), named(load.siteId), load.from_s, load.upTo_s, load.given_gal, load.kept_gal, load.isAssumed ? 'yes' : 'no'])],
    [['assumed', 'tender', 'place', 'mark', 'at_s'], ...assumptions.map((one): Row => [one.kind, named(one.apparatusId), one.place ?? '', one.mark ?? '', one.at_s])],
  ]
  return parts.map((rows) => rows.map((row) => row.map(cell).join(',')).join('\r\n')).join('\r\n\r\n') + '\r\n'
}

type Row = (string | number | undefined)[]

/** A text that a spreadsheet might take for a formula is kept a text. */
function cell(value: string | number | undefined): string {
  if (value === undefined) return ''
  if (typeof value === 'number') return String(Math.round(value * 10) / 10)
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
