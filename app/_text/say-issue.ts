import type { Issue } from '@/lib/issue'
import { findUnit } from '@/lib/units'
import { formatBetween } from './format-figure'
import { formatNumber, formatShare } from './format-number'
import { formatQuantity } from './format-quantity'
import { issueRounding } from './issue-rounding'
import { listWords } from './list-words'
import { argumentsOf, isTextKey, say } from './say'
import type { TextValue } from './say'
import type { UnitSystem } from './unit-system'

/** Name of an item for the sentence, or undefined where the id means nothing to the reader. */
export type NameOf = (id: string) => string | undefined

/**
 * One value of an issue as the sentence shows it: quantities by the unit their key ends in,
 * shares as percentages, ids by the name of their item, roads without a name as such, counts left as numbers for plurals.
 */
export function issueValue(key: string, value: number | string, names: NameOf, system: UnitSystem, code = ''): TextValue {
  if (value === '' && /name$/i.test(key)) return say('issue.unnamed-road')
  if (typeof value === 'string') return value === '' ? say('issue.unnamed') : (names(value) ?? value)
  const unit = findUnit(key)
  if (unit) return formatQuantity(value, unit, system, issueRounding(key, code))
  if (/share$/i.test(key)) return formatShare(value)
  return Number.isInteger(value) ? value : formatNumber(value, 2)
}

/** Differences between values of an issue, as `{gap}`: those of the figures as shown. */
function shownDifferences({ values: { from_s, to_s } }: Issue): Record<string, TextValue> {
  return typeof from_s === 'number' && typeof to_s === 'number' ? { gap: formatBetween(from_s, to_s) } : {}
}

/** Quantity that is named by its own value: `n20_inHg`, `n2p5_in`. */
function fixedQuantity(name: string, system: UnitSystem): string | undefined {
  const digits = /^n(\d+(?:p\d+)?)_/.exec(name)?.[1]
  const unit = findUnit(name)
  return digits !== undefined && unit ? formatQuantity(Number(digits.replace('p', '.')), unit, system) : undefined
}

/**
 * The sentence of an issue: message `issue.<code>`.
 *
 * Besides the issue's own values a message may use `{subject}`, `{subject2}`, `{subject3}` (names of the
 * first three items it is about), `{subjects}` (all of them, as a list), `{about}` (a sentence of its own that names
 * them, empty where there is none), and where it has both ends of them the
 * difference `{gap}`. A value that the issue
 * does not carry reads "not known"; a code without words is shown as it is, never hidden. A fixed
 * quantity of the sentence is written `{n20_inHg}`, so that it too follows the units in use.
 */
export function sayIssue(issue: Issue, names: NameOf, system: UnitSystem): string {
  const subjects = issue.subjectIds.map((id) => names(id) ?? say('issue.unnamed'))
  const values: Record<string, TextValue> = {}
  for (const [key, value] of Object.entries(issue.values)) values[key] = issueValue(key, value, names, system, issue.code)
  Object.assign(values, shownDifferences(issue))
  const [first, second, third] = subjects
  if (first !== undefined) values.subject = first
  if (second !== undefined) values.subject2 = second
  if (third !== undefined) values.subject3 = third
  if (subjects.length > 0) values.subjects = listWords(new Set(subjects))
  values.about = subjects.length > 0 ? say('issue.about', { subjects: values.subjects ?? '' }) : ''
  values.placeCount ??= 1

  const key = `issue.${issue.code}`
  if (!isTextKey(key)) return say('issue.unworded', { code: issue.code })
  for (const name of argumentsOf(key)) values[name] ??= fixedQuantity(name, system) ?? say('quantity.unknown')
  return say(key, values).trim()
}
