/** Letters without their case and accents, apostrophes as a keyboard has them. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{Mn}/gu, '').replaceAll('’', "'").toLowerCase()

const wordsOf = (text: string): string[] => text.split(/[^\p{L}\p{N}]+/u)

/** A name and its note as they are looked at, so that it is done once and not at every key. */
export type Readied = { readonly own: string; readonly ownWords: readonly string[]; readonly besides: string; readonly besidesWords: readonly string[] }

export function readyName(label: string, note: string): Readied {
  const own = plain(label), besides = plain(note)
  return { own, ownWords: wordsOf(own), besides, besidesWords: wordsOf(besides) }
}

/** What was typed; `fillers` are those of its words that a question has anyway. */
export type Asked = { readonly whole: string; readonly words: readonly string[]; readonly fillers: ReadonlySet<string> }

/** @param fillers words such as "how" and "the", that need not be found while another is */
export function readyTyped(typed: string, fillers: ReadonlySet<string> = new Set()): Asked {
  const text = plain(typed)
  const words = text.split(/[\s?!,]+/).filter(Boolean)
  const isQuestion = words.some((word) => !fillers.has(word))
  return { whole: text.trim(), words, fillers: new Set(isQuestion ? words.filter((word) => fillers.has(word)) : []) }
}

/**
 * How well a name answers what was typed: 0 for not at all, up to 1 for the name itself. Every typed word must begin a
 * word of the name or of its note, or stand within one, which counts less; order does not matter. A word of many is found by its one,
 * and fillers need not be found.
 */
export function scoreOf(name: Readied, { whole, words, fillers }: Asked): number {
  if (words.length === 0) return 1
  if (name.own === whole) return 1
  const scores = words.map((word) => [word, scoreOfWord(name, word) || scoreOfWord(name, oneOf(word))] as const).filter(([word, score]) => score > 0 || !fillers.has(word)).map(([, score]) => score)
  return scores.includes(0) ? 0 : scores.reduce((sum, score) => sum + score, 0) / scores.length
}

/** The same for one name. */
export const matchScore = (label: string, note: string, typed: string, fillers?: ReadonlySet<string>): number => scoreOf(readyName(label, note), readyTyped(typed, fillers))

function scoreOfWord({ own, ownWords, besides, besidesWords }: Readied, word: string): number {
  if (own.startsWith(word)) return 0.9
  if (isBegun(ownWords, word)) return 0.8
  if (own.includes(word)) return 0.5
  if (isBegun(besidesWords, word)) return 0.3
  return besides.includes(word) ? 0.1 : 0
}

/** Shorter words have an s of their own. */
const LEAST_OF_MANY = 4

/** "bridges" is looked for as "bridge" where it is not found as it stands. */
const oneOf = (word: string): string => (word.length >= LEAST_OF_MANY && word.endsWith('s') ? word.slice(0, -1) : word)

const isBegun = (words: readonly string[], typed: string): boolean => words.some((one) => one.startsWith(typed))
