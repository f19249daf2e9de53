import caution from './en/caution.json'
import choice from './en/choice.json'
import device from './en/device.json'
import doubt from './en/doubt.json'
import entry from './en/entry.json'
import evidence from './en/evidence.json'
import field from './en/field.json'
import issue from './en/issue.json'
import kit from './en/kit.json'
import map from './en/map.json'
import plan from './en/plan.json'
import quantity from './en/quantity.json'
import result from './en/result.json'
import shell from './en/shell.json'
import working from './en/working.json'
import type { Area } from './messages'

type Words = Readonly<Record<string, string>>

/** Words that most screens use come with all of them; those of one screen come with the files that say them, by `areas`. */
const held = new Map<string, Words>(Object.entries({
  caution, choice, device, doubt, entry, evidence, field, issue, kit, map, plan, quantity, result, shell, working,
}))

/** Brings the words of an area in. */
export function addWords(area: Area, words: Words): void {
  held.set(area, words)
}

/** Text of a key, or undefined if there is none, or its area has not been brought in. */
export function findMessage(key: string): string | undefined {
  const dot = key.indexOf('.')
  const words = held.get(key.slice(0, dot))
  const own = key.slice(dot + 1)
  return words && Object.hasOwn(words, own) ? words[own] : undefined
}
