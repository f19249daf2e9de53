/** Letters without their case and accents, apostrophes as a keyboard has them. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{Mn}/gu, '').replaceAll('’', "'").toLowerCase()

/**
 * How well a name answers what was typed: 0 for not at all, up to 1 for the name itself. Every typed word must begin a
 * word of the name or of its note, or stand within one, which counts less; order does not matter.
 */
export function matchScore(label: string, note: string, typed: string): number {
  const asked = plain(typed).split(/\s+/).filter(Boolean)
  if (asked.length === 0) return 1
  const own = plain(label), besides = plain(note)
  if (own === plain(typed).trim()) return 1
  const scores = asked.map((word): number => {
    if (own.startsWith(word)) return 0.9
    if (beginsWord(own, word)) return 0.8
    if (own.includes(word)) return 0.5
    if (beginsWord(besides, word)) return 0.3
    return besides.includes(word) ? 0.1 : 0
  })
  return scores.includes(0) ? 0 : scores.reduce((sum, score) => sum + score, 0) / scores.length
}

const beginsWord = (text: string, word: string): boolean => text.split(/[^\p{L}\p{N}]+/u).some((one) => one.startsWith(word))
