/** A mark on a map or a chart has room for so many characters. */
const ROOM = 4

type Named = { readonly id: string; readonly name: string }

/**
 * A short name for each vehicle, to stand in its mark on a map or beside its line on a chart: the number it goes by ("Tender 12" is
 * 12), the first letters of its words where it has none. The same for the same list, whoever of it is shown: give all that could
 * come, not only those that are there.
 *
 * @param all vehicles; those whose short names would be alike are told apart by the first letter of their names, then by a letter in their order
 */
export function shortNames(all: readonly Named[]): ReadonlyMap<string, string> {
  const short = new Map(all.map((one) => [one.id, shortOf(one.name)]))
  for (const widen of [lettered, ordered]) {
    for (const alike of groupsOf(short)) alike.forEach((id, k) => { short.set(id, widen(all.find((one) => one.id === id)!.name, short.get(id)!, k)) })
  }
  return short
}

function shortOf(name: string): string {
  const words = name.split(/\s+/).map((word) => word.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '')).filter((word) => word !== '')
  const number = words.findLast((word) => /\d/.test(word) && word.length <= ROOM)
  if (number !== undefined) return number
  if (words.length < 2) return (words[0] ?? '?').slice(0, ROOM)
  return words.slice(0, ROOM - 1).map((word) => word.slice(0, 1).toUpperCase()).join('')
}

const lettered = (name: string, short: string): string => {
  const letter = /\p{L}/u.exec(name)?.[0].toUpperCase() ?? ''
  return short.startsWith(letter) || letter.length + short.length > ROOM ? short : `${letter}${short}`
}

/** a, b, …, z, then numbers. */
const ordered = (_: string, short: string, k: number): string => `${short}${k < 26 ? String.fromCharCode(97 + k) : `-${k + 1}`}`

function groupsOf(short: ReadonlyMap<string, string>): string[][] {
  const groups = new Map<string, string[]>()
  for (const [id, words] of short) groups.set(words, [...(groups.get(words) ?? []), id])
  return [...groups.values()].filter((ids) => ids.length > 1)
}
