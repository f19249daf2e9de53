import { usSymbol } from '@/lib/units'
import type { Unit } from '@/lib/units'
import { findWrittenUnit, plainUnitWord, writtenUnits } from '@/lib/written-units'
import type { WrittenUnit } from '@/lib/written-units'
import { displayUnit, entrySymbol } from './display-unit'
import { defaultRange } from './entry-range'
import type { Range } from './entry-range'
import { formatQuantity } from './format-quantity'
import { findNumber, NUMBER_PATTERN, plainNumberText } from './parse-number'
import { say } from './say'
import type { UnitSystem } from './unit-system'

/** What became of a typed text. `entered` is the text as typed, without the spaces around it. */
export type ParsedQuantity =
  | { readonly kind: 'absent' }
  | { readonly kind: 'value'; readonly value: number; readonly entered: string }
  | { readonly kind: 'refused'; readonly sentence: string }

export type ParseOptions = {
  /** Name of the field, as its label says it; begins the sentence of a refusal. */
  field?: string
  /** Bounds in the inside unit; each replaces the unit's own. */
  min?: number
  max?: number
}

type Part = { value: number; word: string }

/** How a figure of this unit may be written. */
function exampleOf(unit: Unit, system: UnitSystem): string {
  if (unit === 'ft' || unit === 'in') return say('entry.like.length')
  return unit === 's' ? say('entry.like.time') : say('entry.like.unit', { symbol: entrySymbol(unit, system) })
}

/**
 * Reads what a person typed: "12", "2.5 m", "8 ft 6 in", 8'6", "1,000", "1 000", "2½ in", "14:30", "1 h 20 min".
 * A unit that is typed wins over the system in use. A time without unit is minutes, or m:ss.
 *
 * @returns the value in `unit`; absent for an empty text; else a sentence that names field, value and range
 */
export function parseQuantity(text: string, unit: Unit, system: UnitSystem, options: ParseOptions = {}): ParsedQuantity {
  const entered = text.trim()
  if (entered === '') return { kind: 'absent' }
  const field = options.field ?? say('entry.this-field')
  const refuse = (sentence: string): ParsedQuantity => ({ kind: 'refused', sentence })
  const unreadable = () => refuse(say('entry.not-a-number', { field, text: entered, like: exampleOf(unit, system) }))

  const plain = plainNumberText(entered)
  const sign = plain.startsWith('-') ? -1 : 1
  const body = plain.replace(/^[-+] ?/, '')
  const clock = unit === 's' ? findClockTime(body) : undefined
  const parts = clock === undefined ? findParts(body) : []
  if (!parts) {
    const comma = /^\d+,\d{1,2}(?!\d)/.test(body) || /^\d+,\d{4,}/.test(body)
    return comma ? refuse(say('entry.decimal-comma', { field, text: entered })) : unreadable()
  }

  let value = clock ?? 0
  let offset = 0
  let last: WrittenUnit | undefined
  for (const [index, part] of parts.entries()) {
    const word = plainUnitWord(part.word)
    const ambiguous = unit === 'lb' ? weightWord(word, system) : word
    if (ambiguous === undefined) return refuse(say('entry.which-ton', { field, text: entered }))
    const previous = index > 0 ? parts[index - 1] : undefined
    if (ambiguous === '' && previous && (previous.word === '' || !last?.words.includes('ft'))) {
      return unreadable()
    }
    const found = ambiguous === '' ? unitWithoutWord(unit, system, previous !== undefined) : findWrittenUnit(ambiguous, unit)
    if (!found) return refuse(say('entry.unit-unknown', { field, text: part.word.trim(), units: unitList(unit) }))
    if (index > 0 && !mayFollow(last, found, part.value)) return unreadable()
    value += part.value * found.factor
    offset = found.offset ?? 0
    last = found
  }
  value = sign * value + offset

  const range: Range = { ...defaultRange(unit), ...(options.min !== undefined && { min: options.min }), ...(options.max !== undefined && { max: options.max }) }
  const noise = 1e-9 * Math.max(1, Math.abs(value))
  if (value < range.min - noise || value > range.max + noise) {
    const shown = (bound: number): string => formatQuantity(bound, unit, system)
    return refuse(say('entry.out-of-range', { field, text: entered, min: shown(range.min), max: shown(range.max) }))
  }
  return { kind: 'value', value, entered }
}

const partPattern = new RegExp(String.raw`^(${NUMBER_PATTERN})\s*([^\d\s+\-,;:][^\d+\-,;:]*?(?:(?<=[mt])[23](?:/h)?)?)?\s*(?=[\d.]|$)`)

/** Number and unit, again and again to the end of the text; undefined where it is something else. */
function findParts(body: string): Part[] | undefined {
  const parts: Part[] = []
  let rest = body
  while (rest !== '') {
    const match = partPattern.exec(rest)
    const value = match?.[1] === undefined ? undefined : findNumber(match[1].trim())
    if (!match || value === undefined) return undefined
    parts.push({ value, word: match[2] ?? '' })
    rest = rest.slice(match[0].length)
  }
  return parts.length > 0 && parts.length <= 3 ? parts : undefined
}

/** "m:ss" or "h:mm:ss" in seconds, a unit of time after it allowed; undefined if it is neither. */
function findClockTime(body: string): number | undefined {
  const match = /^(\d+):([0-5]\d)(?::([0-5]\d))?\s*(min|mins|minutes|h|hours)?$/.exec(body)
  if (!match) return undefined
  const [, a = '0', b = '0', c, word] = match
  if (c !== undefined) return Number(a) * 3600 + Number(b) * 60 + Number(c)
  return word?.startsWith('h') ? Number(a) * 3600 + Number(b) * 60 : Number(a) * 60 + Number(b)
}

/** A ton is 2,000 lb on a bridge sign in the United States and 1,000 kg elsewhere: where it may be either, ask. */
function weightWord(word: string, system: UnitSystem): string | undefined {
  if (word === 't') return system === 'us' ? undefined : 'tonne'
  if (word === 'ton' || word === 'tons') return system === 'us' ? 'shortton' : undefined
  return word
}

/** The system's own unit; after feet, inches: 8'6. */
function unitWithoutWord(unit: Unit, system: UnitSystem, isAfterFeet: boolean): WrittenUnit | undefined {
  if (isAfterFeet) return findWrittenUnit('in', unit)
  if (unit === 's') return findWrittenUnit('min', unit)
  return findWrittenUnit(plainUnitWord(system === 'us' ? usSymbol[unit] : displayUnit(unit, system).symbol), unit)
}

/** Feet then inches, hours then minutes then seconds; the smaller less than one of the larger. */
function mayFollow(before: WrittenUnit | undefined, next: WrittenUnit, value: number): boolean {
  if (!before) return false
  const pair = (a: string, b: string): boolean => before.words.includes(a) && next.words.includes(b)
  if (pair('ft', 'in')) return value < 12
  return (pair('h', 'min') || pair('min', 's') || pair('h', 's')) && value < 60
}

function unitList(unit: Unit): string {
  return writtenUnits[unit].map(({ words }) => words[0] ?? '').map((word) => unitSpelling[word] ?? word).join(', ')
}

/** Spelling for a sentence, where it is more than lower case. */
const unitSpelling: Readonly<Record<string, string>> = {
  l: 'L', 'l/min': 'L/min', 'l/s': 'L/s', m3: 'm³', 'm3/h': 'm³/h', kpa: 'kPa', inhg: 'inHg', '°f': '°F', '°c': '°C',
  cuft: 'cu ft', sqft: 'sq ft', m2: 'm²', hpa: 'hPa', mmhg: 'mmHg', shortton: 'short tons', tonne: 'tonnes',
}
