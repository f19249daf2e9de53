import { distanceM, METRES_PER_DEGREE, type Point } from '../geo'

/** What is there already: the same thing of ours, of the same name nearby, or at the very spot. */
export type MatchBy = 'id' | 'placeAndName' | 'place'
export type Known = { readonly id: string; readonly name: string; readonly point?: Point }
export type Match = { readonly id: string; readonly name: string; readonly by: MatchBy; readonly away_m: number }

/** A name is the same without capitals, accents, spaces and points. */
export const plainName = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Of one name and nearer than this is one thing: a pond is marked at its bank or its middle. Common practice, no source. */
const SAME_NAME_M = 150
/** Nearer than this is one thing whatever its name: what a phone in the open is good to. Common practice, no source. */
const SAME_SPOT_M = 5

/** @returns what a place of that id, name and point is already there as; the best kind of match first, then the nearest */
export function findMatch(known: readonly Known[], { id, name, point }: { id?: string; name: string; point: Point | undefined }): Match | undefined {
  const same = id === undefined ? undefined : known.find((one) => one.id === id)
  if (same) return { id: same.id, name: same.name, by: 'id', away_m: same.point && point ? distanceM(same.point, point) : 0 }
  if (!point) return undefined
  const wanted = plainName(name)
  let best: Match | undefined
  for (const one of known) {
    if (!one.point || Math.abs(one.point.lat - point.lat) * METRES_PER_DEGREE > SAME_NAME_M) continue
    const away_m = distanceM(one.point, point)
    const by: MatchBy | undefined = away_m <= SAME_NAME_M && wanted !== '' && plainName(one.name) === wanted ? 'placeAndName' : away_m <= SAME_SPOT_M ? 'place' : undefined
    if (by && (!best || (by === best.by ? away_m < best.away_m : by === 'placeAndName'))) best = { id: one.id, name: one.name, by, away_m }
  }
  return best
}
