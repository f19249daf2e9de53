import type { Issue } from '@/lib/issue'
import { countUnmeasured, isNeverEnough, isUnfinished, isUnknownWater, missingForTime, type Link, type SupplyResult } from '@/lib/supply'
import { formatAsked, formatFrom, formatGiven, formatShortBy, formatUntil } from './format-figure'
import { issueLines } from './issue-lines'
import { listWords } from './list-words'
import { say } from './say'
import { sayIssue, type NameOf } from './say-issue'
import { timeWords } from './time-words'
import type { UnitSystem } from './unit-system'

/** A part of the chain in words: "the fill rate at Mill pond". */
export const linkText = ({ kind, subjectId }: Pick<Link, 'kind' | 'subjectId'>, names: NameOf): string =>
  say(`result.link.${kind}`, { subject: names(subjectId) ?? subjectId })

/** A line of the answer: `danger` where somebody would be without water, `amber` where a person must look or go on. */
export type AnswerLine = { readonly look: 'danger' | 'amber' | 'plain'; readonly text: string }

/**
 * What an answer silently stands on unless its headline says it, in the order in which it is said: water that was planned and does not
 * come, what nobody has named, hose that is not carried or may pass less, a road that may not bear a tender, a time of arrival nobody has said, a
 * prime or a pump that may not do what is counted on.
 */
const saidInHeadline: readonly string[] = [
  'lay-pumper-elsewhere', 'lay-hose-beyond-district', 'lay-hose-taken', 'lay-hose-unlisted',
  'fill-water-unnamed', 'dump-tank-assumed', 'dump-pumper-assumed', 'fill-pumper-assumed', 'first-due-missing', 'first-due-tank-missing',
  'dump-line-short', 'dump-hose-short', 'dump-hose-thin', 'dump-line-unsaid',
  'suction-not-carried', 'route-soft', 'unit-without-station', 'rated-hose-assumed', 'vacuum-over-20inHg', 'fill-prime-slow', 'dry-vacuum-below-standard',
]

const placeInHeadline = ({ code }: Issue): number => saidInHeadline.indexOf(code)

/** A note is nothing that the answer stands on. */
const isSaidInHeadline = (one: Issue): boolean => one.severity === 'warn' && placeInHeadline(one) >= 0

/**
 * The answer in lines: first no water at all, then short of the need, then what it stands on that nobody has chosen,
 * or water that nobody has measured, then the flows, the dependable one first. Until the nights are done it says that it is not tested for doubt.
 */
export function answerLines(result: SupplyResult, names: NameOf, system: UnitSystem): AnswerLine[] {
  const { sustainable_gpm, supplyReady_s, gap_s, tankEmpty_s, limitingLink, dependable } = result
  const blocking = result.issues.find(({ severity }) => severity === 'block')
  const cautionsOf = (isSaid: (one: Issue) => boolean) => issueLines(result.issues.filter(isSaid).sort((a, b) => placeInHeadline(a) - placeInHeadline(b)), names, system).map(({ text }): AnswerLine => ({ look: 'amber', text }))
  if (blocking) return [{ look: isUnfinished(blocking) ? 'amber' : 'danger', text: say('result.blocked-by', { reason: sayIssue(blocking, names, system) }) }, ...cautionsOf(isSaidInHeadline)]
  if (sustainable_gpm === null) return [{ look: 'amber', text: say('result.blocked') }]

  const lines: AnswerLine[] = []
  if (gap_s && tankEmpty_s !== null && supplyReady_s !== null)
    lines.push({ look: 'danger', text: say('result.gap', { gap: timeWords('gap_s', result), empty: formatUntil(tankEmpty_s), ready: formatFrom(supplyReady_s) }) })
  lines.push(...shortLine(result, sustainable_gpm, system))
  lines.push(...cautionsOf((one) => isSaidInHeadline(one) || isUnknownWater(one)))

  const sentences = [flowsSentence(result, sustainable_gpm, system)]
  if (supplyReady_s !== null && sustainable_gpm > 0) sentences.push(...readySentences(result, supplyReady_s, system))
  if (dependable === undefined) sentences.unshift(say('result.untested'))
  for (const { from_s, flow_gpm, layIds } of result.laterFlows ?? [])
    sentences.push(say('result.later', { time: formatFrom(from_s), flow: formatGiven(flow_gpm, system, result.needed_gpm), lays: listWords(layIds.map((id) => names(id) ?? id)) }))
  if (result.links.length > 0) sentences.push(limitingLink ? say('result.limited', { link: linkText(limitingLink, names) }) : say('result.not-limited'))
  sentences.push(say('result.unmeasured', countUnmeasured(result)))
  return [...lines, { look: 'plain', text: sentences.join(' ') }]
}

/** When there is water, and whether it is ever enough; a gap has a line of its own, and so has what stands in the way of knowing it. That there is none is no comfort where it is never enough. */
function readySentences(result: SupplyResult, supplyReady_s: number, system: UnitSystem): string[] {
  const { firstWater_s, gap_s } = result
  const isEngineKnown = missingForTime('gap_s', result).length === 0
  const never = neverEnoughWords(result, system)
  const ready = say('result.ready', { ready: formatFrom(supplyReady_s), water: isEngineKnown && firstWater_s !== null ? formatFrom(firstWater_s) : 'none', gap: gap_s === 0 && never === undefined ? 'zero' : 'other' })
  return never === undefined ? [ready] : [ready, never]
}

/** Said beside when supply is ready, where it never brings what is needed; undefined where it does, or where nobody has said what is needed. */
export const neverEnoughWords = (result: Pick<SupplyResult, 'sustainable_gpm' | 'needed_gpm' | 'laterFlows'>, system: UnitSystem): string | undefined =>
  isNeverEnough(result) ? say('result.ready-never-enough', { needed: formatAsked(result.needed_gpm, system) }) : undefined

/** Dependable, expected, needed; what is not known is left out. */
function flowsSentence({ dependable, needed_gpm }: SupplyResult, sustainable_gpm: number, system: UnitSystem): string {
  const flow = (value: number) => formatGiven(value, system, needed_gpm)
  const tested = dependable ? 'dependable' : 'untested'
  const expected = flow(sustainable_gpm)
  const values = { expected, dependable: flow(dependable?.flow_gpm ?? 0), needed: formatAsked(needed_gpm, system) }
  if (needed_gpm === null) return say(`result.flows.${tested}.no-need`, values)
  return say((dependable?.flow_gpm ?? -1) >= needed_gpm ? 'result.flows.dependable.met' : `result.flows.${tested}`, values)
}

/** Short of the need: by the dependable flow where it is known, else by the expected one. */
function shortLine({ dependable, needed_gpm }: SupplyResult, sustainable_gpm: number, system: UnitSystem): AnswerLine[] {
  if (needed_gpm === null) return []
  if (sustainable_gpm <= 0) return [{ look: 'danger', text: say('result.nothing', { needed: formatAsked(needed_gpm, system) }) }]
  const short = formatShortBy(dependable?.flow_gpm ?? sustainable_gpm, needed_gpm, system)
  if (short === undefined) return []
  return [{ look: 'danger', text: say(dependable ? 'result.short.dependable' : 'result.short.untested', { short, needed: formatAsked(needed_gpm, system) }) }]
}

/** The same as sentences, for where lines have no look. */
export const answerSentences = (result: SupplyResult, names: NameOf, system: UnitSystem): string[] => answerLines(result, names, system).map(({ text }) => text)
