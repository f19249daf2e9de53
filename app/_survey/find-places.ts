import { placesOf, type District, type Place } from '@/lib/plan'
import { searchWords } from './place-summary'

/** A place with the words that a search looks through, put together once for each state of the district and not at every letter. */
export type ReadyPlace = { readonly place: Place; readonly words: string }

export const readyPlaces = (district: District): ReadyPlace[] => placesOf(district).map((place) => ({ place, words: searchWords(place, district) }))

/** Places that every word of a search is found in, in the order given. */
export function findPlaces(ready: readonly ReadyPlace[], search: string): Place[] {
  const asked = search.toLowerCase().split(/\s+/).filter(Boolean)
  return ready.filter(({ words }) => asked.every((word) => words.includes(word))).map(({ place }) => place)
}
