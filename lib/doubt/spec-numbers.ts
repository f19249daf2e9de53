import type { ShuttleSpec } from '../shuttle'

/** Numbers of a spec by their path, as `tenders/0/toFill_s`. */
export type SpecNumbers = ReadonlyMap<string, number>

/** Derived from the rest, only to end a run that never begins: no doubt moves it. */
const derived: ReadonlySet<string> = new Set(['horizon_s', 'seed'])
/** Whole, and decided by who comes: a night has as many as the plan, never a part of one between two knots. */
const counted: ReadonlySet<string> = new Set(['bayCount', 'flowingBayCount', 'positionCount'])

/** Every number of a spec that may be doubted, by its path. */
export function numbersOf(spec: ShuttleSpec): SpecNumbers {
  const numbers = new Map<string, number>()
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') numbers.set(path, value)
    else if (typeof value === 'object' && value !== null)
      for (const [name, inner] of Object.entries(value)) if (!derived.has(name) && !counted.has(name)) walk(inner, path === '' ? name : `${path}/${name}`)
  }
  walk(spec, '')
  return numbers
}

/** Moments are sums of times; what doubt does to their parts adds up. Everything else is a product. */
export const isMoment = (path: string): boolean => /(^|\/)(ready|pumpReady|arrive)_s$|After_s\/\d+$/.test(path)

/**
 * The spec's shape with other shapes of the same thing brought to it, so that number answers number.
 *
 * A dump told in parts where the base has one rate becomes the one rate that takes as long; one
 * rate where the base has parts is that rate in each.
 */
export function inShapeOf(base: ShuttleSpec, other: ShuttleSpec): ShuttleSpec {
  return {
    ...other,
    tenders: other.tenders.map((tender, index) => {
      const count = base.tenders[index]?.dumpRate_gpm.length ?? tender.dumpRate_gpm.length
      if (count === tender.dumpRate_gpm.length) return tender
      const even_gpm = tender.dumpRate_gpm.length / tender.dumpRate_gpm.reduce((sum, rate) => sum + 1 / rate, 0)
      return { ...tender, dumpRate_gpm: Array<number>(count).fill(even_gpm) }
    }),
  }
}

/** A spec of its own that may be written to, and where its numbers stand. */
export function writableSpec(spec: ShuttleSpec): { readonly spec: ShuttleSpec; readonly place: (path: string) => { holder: Record<string, number>; name: string } } {
  const copy = (value: unknown): unknown =>
    Array.isArray(value) ? value.map(copy)
      : typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, copy(inner)]))
        : value
  const own = copy(spec) as ShuttleSpec
  return {
    spec: own,
    place: (path) => {
      const names = path.split('/')
      const name = names.pop() ?? ''
      let holder: unknown = own
      for (const step of names) holder = (holder as Record<string, unknown>)[step]
      return { holder: holder as Record<string, number>, name }
    },
  }
}
