import type { Issue } from '../issue'

/** Several places on one road say the same thing: they stand as one, with all whom they concern. */
type Said = { readonly first: Issue; readonly subjectIds: string[]; readonly places: Set<string>; readonly values: Record<string, number | string> }

/** What tells two cautions apart: the road and what is posted on it. Else all that they say. */
const postings = ['name', 'limit_ft', 'limit_lb'] as const
/** What differs from one vehicle, or one way over the road, to the next: the worst of them counts. */
const worst = ['length_mi', 'height_ft', 'gross_lb', 'gateCount', 'gap_ft'] as const

/** Cautions of ways put together by what they say of which road. */
export class RoadCautions {
  readonly #said = new Map<string, Said>()

  /** @param apparatusId whose way it is */
  add({ code, severity, values }: Pick<Issue, 'code' | 'severity' | 'values'>, apparatusId: string): void {
    const { name, roadId, lat, lon } = values
    const place = JSON.stringify(roadId ?? [lat, lon])
    const isOfRoad = typeof name === 'string' && name !== ''
    const key = `${code} ${isOfRoad ? JSON.stringify(postings.map((posting) => values[posting])) : lat === undefined ? JSON.stringify(values) : place}`
    const known = this.#said.get(key)
    if (!known) {
      this.#said.set(key, { first: { code, severity, subjectIds: [], values }, subjectIds: [apparatusId], places: new Set([place]), values: { ...values } })
      return
    }
    if (!known.subjectIds.includes(apparatusId)) known.subjectIds.push(apparatusId)
    known.places.add(place)
    for (const name of worst) {
      const [one, other] = [values[name], known.values[name]]
      if (typeof one === 'number' && typeof other === 'number') known.values[name] = Math.max(one, other)
    }
  }

  /** In the order in which each was first said. `placeCount`: on so many bridges, or at so many postings, of that road. */
  list = (): Issue[] => [...this.#said.values()].map(({ first, subjectIds, places, values }) => ({ ...first, subjectIds, values: { ...values, placeCount: places.size } }))
}
