import { LOCALE } from './format-number'

const lists = {
  all: new Intl.ListFormat(LOCALE, { type: 'conjunction' }),
  any: new Intl.ListFormat(LOCALE, { type: 'disjunction' }),
}

/** Words as a list in a sentence: "a, b, and c", or with `any` "a, b, or c". */
export const listWords = (words: Iterable<string>, of: keyof typeof lists = 'all'): string => lists[of].format(words)
