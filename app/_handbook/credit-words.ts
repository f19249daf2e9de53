import { creditRules, type CreditCheck, type CreditLine } from '@/lib/supply'
import { formatFrom, formatGiven, formatMinutes, formatQuantity, formatUntil, isTextKey, say, type NameOf, type TextValues, type UnitSystem } from '../_text'
import '../_text/areas/handbook'
import { namesOfAll, shortWords } from './short-words'

/** The limits of the check in the units in use. */
export const ruleWords = (system: UnitSystem): TextValues => ({
  minimum: formatQuantity(creditRules.minimum_gpm, 'gpm', system),
  volume: formatQuantity(creditRules.volume_gal, 'gal', system),
  stationWithin: formatQuantity(creditRules.stationWithin_mi, 'mi', system),
  suctionWithin: formatQuantity(creditRules.suctionWithin_ft, 'ft', system),
})

/** A moment of the check: after dispatch, and after first arrival where it is known. */
function momentWords(time_s: number, { firstArrive_s }: Pick<CreditCheck, 'firstArrive_s'>): string {
  if (firstArrive_s === undefined) return formatMinutes(time_s, 'down')
  return say('handbook.credit.after', { time: formatMinutes(time_s, 'down'), arrival: formatMinutes(Math.max(0, time_s - firstArrive_s), 'down') })
}

/** What one line of the check found, in a sentence or two. */
export function creditWords(line: CreditLine, credit: CreditCheck, names: NameOf, system: UnitSystem): string {
  const { code, verdict, why, values, subjectIds, fails_s } = line
  const number = (key: string) => values[key] ?? 0
  const words: TextValues = {
    ...ruleWords(system),
    subject: namesOfAll(subjectIds.slice(0, 1), names),
    subjects: namesOfAll(subjectIds, names),
    start: formatFrom(number('start_s')), end: formatUntil(number('end_s')), higher: formatFrom(number('higher_s')),
    flow: formatGiven(number('flow_gpm'), system), next: formatGiven(number('next_gpm'), system),
    run: formatGiven(number('run_gpm'), system), compared: formatGiven(number('compared_gpm'), system), by: credit.compared?.by ?? '',
    held: formatQuantity(number('held_gal'), 'gal', system, { style: 'headline', toward: 'down' }),
    distance: code === 'suction-point' ? formatQuantity(number('distance_ft'), 'ft', system) : formatQuantity(number('distance_mi'), 'mi', system),
    time: fails_s === undefined ? '' : momentWords(fails_s, credit),
    why: verdict === 'unknown' && isTextKey(`handbook.unknown.${why ?? ''}`) ? say(`handbook.unknown.${why ?? ''}` as 'handbook.unknown.no-engine') : shortWords(why, subjectIds, names),
  }
  const special = `handbook.${code}.${code === 'higher-rate' && verdict === 'pass' && why === undefined ? 'pass-all' : (why ?? '')}`
  const plain = `handbook.${code}.${verdict}`
  const key = isTextKey(special) ? special : plain
  return isTextKey(key) ? say(key, words) : ''
}
