/** Letters without their case and accents, apostrophes as a keyboard has them. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{Mn}/gu, '').replaceAll('’', "'").toLowerCase()

const wordsOf = (text: string): string[] => text.split(/[^\p{L}\p{N}]+/u)

/** A name and its note as they are looked at, so that it is done once and not at every key. */
export type Readied = { readonly own: string; readonly ownWords: readonly string[]; readonly besides: string; readonly besidesWords: readonly string[] }

export function readyName(label: string, note: string): Readied {
  const own = plain(label), besides = plain(note)
  return { own, ownWords: wordsOf(own), besides, besidesWords: wordsOf(besides) }
}

export type Asked = { readonly whole: string; readonly words: readonly string[] }

export function readyTyped(typed: string): Asked {
  const text = plain(typed)
  return { whole: text.trim(), words: text.split(/\s+/).filter(Boolean) }
}

/**
 * How well a name answers what was typed: 0 for not at all, up to 1 for the name itself. Every typed word must begin a
 * word of the name or of its note, or stand within one, which counts less; order does not matter.
 */
export function scoreOf({ own, ownWords, besides, besidesWords }: Readied, { whole, words }: Asked): number {
  if (words.length === 0) return 1
  if (own === whole) return 1
  const scores = words.map((word): number => {
    if (own.startsWith(word)) return 0.9
    if (isBegun(ownWords, word)) return 0.8
    if (own.includes(word)) return 0.5
    if (isBegun(besidesWords, word)) return 0.3
    return besides.includes(word) ? 0.1 : 0
  })
  return scores.includes(0) ? 0 : scores.reduce((sum, score) => sum + score, 0) / scores.length
}

/** The same for one name. */
export const matchScore = (label: string, note: string, typed: string): number => scoreOf(readyName(label, note), readyTyped(typed))

const isBegun = (words: readonly string[], typed: string): boolean => words.some((one) => one.startsWith(typed))
