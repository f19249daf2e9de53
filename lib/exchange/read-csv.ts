import Papa from 'papaparse'
import { issue, type Issue } from '../issue'
import { decodeText } from './decode-text'
import { exchangeFault } from './exchange-fault'
import { FeatureList, type FoundFile } from './read-report'
import { unguarded } from './spreadsheet-guard'

/**
 * Reads a table of separated values (RFC 4180, and what spreadsheets make of it): commas, semicolons or tabs, a byte
 * order mark, quoted line breaks, a first row of names.
 *
 * @throws ExchangeFault when it has no names above its columns, or no rows
 */
export function readCsv(bytes: Uint8Array): FoundFile {
  const { text, guessed } = decodeText(bytes, { mayGuess: true })
  if (text.includes('\u0000')) throw exchangeFault('exchange-unknown-format')
  const stated = /^sep=(.)\r?\n/i.exec(text)
  const table = text.slice(stated?.[0].length ?? 0)
  const delimiter = stated?.[1] ?? delimiterOf(table)
  const { data, errors } = Papa.parse<string[]>(table, { delimiter })
  const notes: Issue[] = []
  if (guessed !== undefined) notes.push(issue('exchange-encoding-guessed', 'warn', [], { encoding: guessed }))
  const torn = errors.find(({ type }) => type === 'Quotes')
  if (torn) notes.push(issue('exchange-quotes', 'warn', [], { at: (torn.row ?? 0) + 1 }))
  const [heads = [], ...rows] = data
  const columns = namedColumns(heads)
  if (columns.length === 0 || rows.length === 0) throw exchangeFault('exchange-empty')
  const list = new FeatureList()
  rows.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return
    const at = index + 2
    if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell.trim() !== '')) notes.push(issue('exchange-row-longer', 'warn', [], { at }))
    list.add(at, Object.fromEntries(columns.flatMap((column, i) => {
      const cell = unguarded(cells[i] ?? '')
      return cell.trim() === '' ? [] : [[column, cell]]
    })))
  })
  return { ...list.file('csv', notes, decimalOf(delimiter, rows)), columns }
}

/** What parts the names above the columns: the sign that stands there most often, outside of quotes. */
function delimiterOf(table: string): string {
  const counts = new Map([',', ';', '\t', '|'].map((sign) => [sign, 0]))
  let isQuoted = false
  for (const character of table) {
    if (character === '"') isQuoted = !isQuoted
    else if (!isQuoted && (character === '\n' || character === '\r')) break
    else if (!isQuoted && counts.has(character)) counts.set(character, (counts.get(character) ?? 0) + 1)
  }
  return [...counts].sort(([, a], [, b]) => b - a)[0]?.[0] ?? ','
}

/** Names of the columns; one without a name is called by its letter, one of two alike by its number. */
function namedColumns(heads: readonly string[]): string[] {
  const last = heads.findLastIndex((head) => head.trim() !== '')
  const names: string[] = []
  for (const [index, head] of heads.slice(0, last + 1).entries()) {
    const name = head.trim() || `Column ${index + 1}`
    names.push(names.includes(name) ? `${name} (${index + 1})` : name)
  }
  return names
}

/** A comma between digits is the decimal sign where something else parts the columns and no number reads otherwise. */
function decimalOf(delimiter: string, rows: readonly string[][]): '.' | ',' {
  if (delimiter === ',') return '.'
  const cells = rows.slice(0, 500).flat().map((cell) => cell.trim())
  const isMade = cells.some((cell) => /^-?\d+,\d+$/.test(cell) && !/^-?\d{1,3},\d{3}$/.test(cell))
  return isMade && !cells.some((cell) => /^-?\d+\.\d+$/.test(cell) && !/^-?\d{1,3}\.\d{3}$/.test(cell)) ? ',' : '.'
}
