import type { Link, SupplyResult } from '@/lib/supply'
import { formatAsked, formatFrom, formatGiven, formatUntil } from './format-figure'
import { say } from './say'
import type { NameOf } from './say-issue'
import { timeWords } from './time-words'
import type { UnitSystem } from './unit-system'

/** A part of the chain in words: "the fill rate at Mill pond". */
export const linkText = ({ kind, subjectId }: Pick<Link, 'kind' | 'subjectId'>, names: NameOf): string =>
  say(`result.link.${kind}`, { subject: names(subjectId) ?? subjectId })

/**
 * The answer as sentences, lowest figure first; a gap before supply is ready comes before everything.
 */
export function answerSentences(result: SupplyResult, names: NameOf, system: UnitSystem): string[] {
  const { sustainable_gpm, needed_gpm, supplyReady_s, gap_s, tankEmpty_s, limitingLink, assumptions } = result
  const promised = (value: number) => formatGiven(value, system, needed_gpm)
  const asked = (value: number) => formatAsked(value, system)
  if (result.issues.some(({ severity }) => severity === 'block') || sustainable_gpm === null) {
    return [supplyReady_s === null && result.tenders.length > 0 ? say('result.never-ready') : say('result.blocked')]
  }
  const sentences: string[] = []
  if (gap_s && tankEmpty_s !== null && supplyReady_s !== null)
    sentences.push(say('result.gap', { gap: timeWords('gap_s', result), empty: formatUntil(tankEmpty_s), ready: formatFrom(supplyReady_s) }))
  const ready = supplyReady_s === null ? '' : formatFrom(supplyReady_s)
  if (result.dependable) sentences.push(flowsSentence(result.dependable.flow_gpm, sustainable_gpm, needed_gpm, ready, promised, asked))
  else if (needed_gpm === null) sentences.push(say('result.no-need', { sustainable: promised(sustainable_gpm), ready }))
  else if (sustainable_gpm <= 0) sentences.push(say('result.nothing', { needed: asked(needed_gpm) }))
  else sentences.push(say(sustainable_gpm < needed_gpm ? 'result.short' : 'result.enough', { sustainable: promised(sustainable_gpm), needed: asked(needed_gpm), ready }))
  for (const { from_s, flow_gpm, layIds } of result.laterFlows ?? [])
    sentences.push(say('result.later', { time: formatFrom(from_s), flow: promised(flow_gpm), count: layIds.length, lays: layIds.map((id) => names(id) ?? id).join(', ') }))
  if (result.links.length > 0) sentences.push(limitingLink ? say('result.limited', { link: linkText(limitingLink, names) }) : say('result.not-limited'))
  sentences.push(say('result.assumed', { count: assumptions.filter(({ mark }) => mark === 'assumed').length }))
  return sentences
}

type Words = (value: number) => string

/** Dependable, expected and needed flow, lowest first. */
function flowsSentence(dependable_gpm: number, sustainable_gpm: number, needed_gpm: number | null, ready: string, promised: Words, asked: Words): string {
  const parts = [
    { flow_gpm: dependable_gpm, words: say('result.part.dependable', { flow: promised(dependable_gpm) }) },
    { flow_gpm: sustainable_gpm, words: say('result.part.expected', { flow: promised(sustainable_gpm) }) },
    ...(needed_gpm === null ? [] : [{ flow_gpm: needed_gpm, words: say('result.part.needed', { flow: asked(needed_gpm) }) }]),
  ].sort((a, b) => a.flow_gpm - b.flow_gpm)
  const [first = '', second = '', third] = parts.map(({ words }) => words)
  const start = first.charAt(0).toUpperCase() + first.slice(1)
  return third === undefined ? say('result.flows-no-need', { first: start, second, ready }) : say('result.flows', { first: start, second, third, ready })
}
