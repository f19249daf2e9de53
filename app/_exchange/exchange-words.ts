import type { ItemList, PlaceList, Problem } from '@/lib/exchange'
import { plainEnds } from '@/lib/exchange'
import { FEET_PER_MILE, feetFromMetres } from '@/lib/units'
import { fieldLabel, fieldName, formatQuantity, isTextKey, say, sayIssue, type UnitSystem } from '../_text'
import '../_text/areas/exchange'

export const listName = (list: PlaceList): string => say(`exchange.list.${list}`)

/** What a column becomes: an end that every place has, or a field, a part's name before its own. */
export function endName(to: string): string {
  const plain = plainEnds.find((end) => end === to)
  return plain ? say(`exchange.end.${plain}`) : to.split('.').map(fieldLabel).join(', ')
}

/** What a place without a name is called. */
export function unnamed(list: PlaceList, at: number): string {
  const key = `exchange.unnamed.${list}`
  return isTextKey(key) ? say(key, { at }) : say('exchange.unnamed.other', { at })
}

/** Row or feature, with its name and column: "Row 12 (Mill pond), column Lift". */
function whereWords({ at, name, column }: Problem, isTable: boolean): string {
  const place = say(isTable ? 'exchange.at-row' : 'exchange.at-feature', { at })
  const named = name === '' ? place : say('exchange.at-named', { where: place, name: name.slice(0, 60) })
  return column === undefined ? named : say('exchange.at-column', { where: named, column })
}

/** One problem as one sentence, beginning with where it is. */
export function problemWords(problem: Problem, isTable: boolean, system: UnitSystem): string {
  const { field } = problem.issue.values
  const known = typeof field === 'string' ? { ...problem.issue, values: { ...problem.issue.values, field: fieldName(field) } } : problem.issue
  return say('exchange.says', { where: whereWords(problem, isTable), sentence: sayIssue(known, () => undefined, system) })
}

export function awayWords(away_m: number, system: UnitSystem): string {
  const away_ft = feetFromMetres(away_m)
  return away_ft < FEET_PER_MILE / 2 ? formatQuantity(away_ft, 'ft', system, { digits: 0 }) : formatQuantity(away_ft / FEET_PER_MILE, 'mi', system)
}

/** Lists that rows of another's file may become, in the order of the survey and then the plan. */
export const takenLists = ['sources', 'draftSites', 'hazards', 'roadNotes', 'stations', 'fillSites', 'dumpSites', 'legNotes'] as const satisfies readonly ItemList[]
