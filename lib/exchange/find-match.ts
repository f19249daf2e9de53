import { distanceM, METRES_PER_DEGREE, type Point } from '../geo'

/** What is there already: the same thing of ours, of the same name nearby, or at the very spot. */
export type MatchBy = 'id' | 'placeAndName' | 'place'
export type Known = { readonly id: string; readonly name: string; readonly point?: Point }
export type Match = { readonly id: string; readonly name: string; readonly by: MatchBy; readonly away_m: number }

/** A name is the same without capitals, accents, spaces and points. */
const plainName = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Of one name and nearer than this is one thing: a pond is marked at its bank or its middle. Common practice, no source. */
const SAME_NAME_M = 150
/** Nearer than this is one thing whatever its name: what a phone in the open is good to. Common practice, no source. */
const SAME_SPOT_M = 5

/** Height of a strip of latitude: what may be one thing lies in the same strip or the next. */
const STRIP_DEG = SAME_NAME_M / METRES_PER_DEGREE
const stripOf = ({ lat }: Point): number => Math.floor(lat / STRIP_DEG)

/** Places that are known, quick to look through by id and by where they lie. */
export class KnownPlaces {
  readonly #byId = new Map<string, Known>()
  readonly #strips = new Map<number, Known[]>()

  add(one: Known): void {
    this.#byId.set(one.id, one)
    if (!one.point) return
    const strip = stripOf(one.point)
    const there = this.#strips.get(strip)
    if (there) there.push(one)
    else this.#strips.set(strip, [one])
  }

  /** @returns what a place of that id, name and point is already there as; the best kind of match first, then the nearest */
  findMatch({ id, name, point }: { id?: string; name: string; point: Point | undefined }): Match | undefined {
    const same = id === undefined ? undefined : this.#byId.get(id)
    if (same) return { id: same.id, name: same.name, by: 'id', away_m: same.point && point ? distanceM(same.point, point) : 0 }
    if (!point) return undefined
    const wanted = plainName(name)
    const strip = stripOf(point)
    let best: Match | undefined
    for (const one of [strip - 1, strip, strip + 1].flatMap((at) => this.#strips.get(at) ?? [])) {
      const away_m = one.point ? distanceM(one.point, point) : Infinity
      if (away_m > SAME_NAME_M) continue
      const by: MatchBy | undefined = wanted !== '' && plainName(one.name) === wanted ? 'placeAndName' : away_m <= SAME_SPOT_M ? 'place' : undefined
      if (by && (!best || (by === best.by ? away_m < best.away_m : by === 'placeAndName'))) best = { id: one.id, name: one.name, by, away_m }
    }
    return best
  }
}
