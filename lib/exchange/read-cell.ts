import { issue, type Issue } from '../issue'
import type { Unit } from '../units'
import { findWrittenUnit, plainUnitWord, writtenUnits } from '../written-units'
import type { FieldSpec } from './list-fields'
import type { Scalar } from './place'

/** How a column is written: its unit by the word for it, or the order of its days. */
export type CellForm = { readonly unit?: string; readonly decimal: '.' | ',' }
export type ReadCell = { readonly value: unknown } | Issue

/** Orders of day, month and year that a column of days may have. */
export const dayOrders = ['year-month-day', 'month/day/year', 'day/month/year'] as const

const yes = new Set(['yes', 'y', 'true', 't', '1', 'x'])
const no = new Set(['no', 'n', 'false', 'f', '0'])

/**
 * Reads one cell as a field.
 *
 * @returns the value in the field's own unit, or an issue whose values hold the text as it stands
 */
export function readCell(raw: Scalar, spec: FieldSpec, { unit, decimal }: CellForm): ReadCell {
  const text = String(raw).trim()
  switch (spec.type) {
    case 'number': case 'whole': return readQuantity(raw, text, spec, unit, decimal)
    case 'yesNo': {
      const word = text.toLowerCase()
      return yes.has(word) ? { value: true } : no.has(word) ? { value: false } : issue('exchange-not-yes-no', 'block', [], { text })
    }
    case 'choice': {
      const found = findChoice(text, spec)
      return found === undefined ? issue('exchange-not-a-choice', 'block', [], { text, choices: (spec.choices ?? []).map(asWords).join(', ') }) : { value: found }
    }
    case 'day': return readDay(text, unit)
    case 'json':
      try {
        return { value: JSON.parse(text) as unknown }
      } catch {
        return issue('exchange-damaged-part', 'block', [], { text: text.slice(0, 40) })
      }
    case 'ref': return { value: text }
    case 'text': {
      const whole = String(raw)
      return whole.length > (spec.mostCharacters ?? Infinity) ? issue('exchange-too-long', 'block', [], { limit: spec.mostCharacters ?? 0 }) : { value: whole }
    }
  }
}

function readQuantity(raw: Scalar, text: string, spec: FieldSpec, unitWord: string | undefined, decimal: '.' | ','): ReadCell {
  const [, digits = '', word = ''] = /^([-+−–]?[\d.,'’\s\u00a0\u202f]*\d(?:[.,]?(?:[eE][-+]?\d+)?)?)\s*(\D.*)?$/.exec(text) ?? []
  const number = typeof raw === 'number' ? raw : findDecimal(digits, decimal)
  if (number === undefined) return issue('exchange-not-a-number', 'block', [], { text })
  let value = number
  const columnUnit = spec.unit && unitWord !== undefined ? findWrittenUnit(plainUnitWord(unitWord), spec.unit) : undefined
  const written = spec.unit && word !== '' ? findWrittenUnit(plainUnitWord(word), spec.unit) : undefined
  if (word !== '' && !written) return issue('exchange-unit-unknown', 'block', [], { text, units: spec.unit ? unitWords(spec.unit).join(', ') : 'none' })
  const by = written ?? columnUnit
  if (by) value = number * by.factor + (by.offset ?? 0)
  if (spec.type === 'whole' && !Number.isInteger(value)) return issue('exchange-not-whole', 'block', [], { text })
  const noise = 1e-9 * Math.max(1, Math.abs(value))
  const { low = -Infinity, high = Infinity } = spec
  if (value < low - noise || value > high + noise) return issue('exchange-out-of-range', 'block', [], { text, ...boundsIn(spec, by) })
  return { value: Math.min(high, Math.max(low, value)) + 0 }
}

/** The field's bounds in the unit that the cell is written in. */
function boundsIn({ low = 0, high = Infinity, unit }: FieldSpec, by: { words: readonly string[]; factor: number; offset?: number } | undefined): Record<string, string | number> {
  const shown = (bound: number): number => Number(((by ? (bound - (by.offset ?? 0)) / by.factor : bound)).toPrecision(4))
  return { low: shown(low), high: shown(high), unit: by?.words[0] ?? (unit ? unitWords(unit)[0] ?? '' : '') }
}

/** Words for the units that a column of a quantity may be in, the plainest of each. */
export const unitWords = (unit: Unit): string[] => writtenUnits[unit].flatMap(({ words }) => words[0] ?? [])

const patternsOf = (decimal: string, other: string) => ({
  grouped: new RegExp(String.raw`^[-+]?\d{1,3}(?:[ '’${other}]\d{3})+(?:[${decimal}]\d*)?$`),
  straight: new RegExp(String.raw`^[-+]?(?:\d+[${decimal}]?\d*|[${decimal}]\d+)(?:[eE][-+]?\d+)?$`),
  between: new RegExp(String.raw`[ '’${other}]`, 'g'),
})
const patterns = { '.': patternsOf('.', ','), ',': patternsOf(',', '.') } as const

/** A number with its decimal sign known; groups of three by space, apostrophe or the other sign. */
export function findDecimal(text: string, decimal: '.' | ','): number | undefined {
  const plain = text.trim().replace(/[−–]/g, '-').replace(/[\u00a0\u202f\u2009]/g, ' ')
  const { grouped, straight, between } = patterns[decimal]
  if (!grouped.test(plain) && !straight.test(plain)) return undefined
  const value = Number(plain.replace(between, '').replace(decimal, '.'))
  return Number.isFinite(value) ? value : undefined
}

/** A choice as one would write it in a table, and as it is read there: "dry hydrant". */
const asWords = (choice: string): string => choice.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

/** Words other data has for our choices. */
const meant: Readonly<Record<string, string>> = {
  hydrant: 'pressureHydrant', firehydrant: 'pressureHydrant', townhydrant: 'pressureHydrant', dryhydrant: 'dryHydrant', drafthydrant: 'dryHydrant',
  river: 'stream', creek: 'stream', brook: 'stream', canal: 'stream', tank: 'cistern', watertank: 'cistern', undergroundtank: 'cistern', pool: 'cistern', swimmingpool: 'cistern',
  reservoir: 'lake', farmpond: 'pond', firepond: 'pond', quarry: 'pond', asphalt: 'paved', concrete: 'paved', grass: 'firmGrass', mud: 'soft', dirt: 'soft',
}

function findChoice(text: string, { choices = [] }: FieldSpec): string | undefined {
  const plain = (word: string): string => word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')
  const wanted = plain(text)
  const direct = choices.find((choice) => choice === text) ?? choices.find((choice) => plain(choice) === wanted || `type${plain(choice)}` === wanted)
  if (direct !== undefined) return direct
  const other = meant[wanted]
  return other !== undefined && choices.includes(other) ? other : undefined
}

function readDay(text: string, order: string | undefined): ReadCell {
  const wrong = issue('exchange-not-a-day', 'block', [], { text })
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(text)
  const other = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})(?:[T ].*)?$/.exec(text)
  const [year, month, day] = iso
    ? [iso[1], iso[2], iso[3]]
    : other ? (order === 'day/month/year' ? [other[3], other[2], other[1]] : order === 'month/day/year' ? [other[3], other[1], other[2]] : []) : []
  const y = Number(year), m = Number(month), d = Number(day)
  if (!(m >= 1 && m <= 12 && d >= 1 && d <= daysIn(y, m))) return wrong
  return { value: `${String(y).padStart(4, '0')}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}` }
}

const daysIn = (year: number, month: number): number =>
  month === 2 ? (year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31
