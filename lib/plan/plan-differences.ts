import type { Plan } from './documents/plan'

/** Which part of a plan a difference stands in. */
export type DifferencePart = 'plan' | 'fillSites' | 'dumpSites' | 'tenders' | 'demand' | 'legNotes'

export type DifferenceValue = number | string | boolean | readonly string[]

/** One field in which plans differ; values in the order of the plans, absent where a plan says nothing. */
export type PlanDifference = {
  readonly part: DifferencePart
  /** First, second … of its kind, from 1; absent for the plan itself, a tender or a way. */
  readonly place?: number
  /** The tender, or both ends of the way. */
  readonly itemIds?: readonly string[]
  readonly field: string
  readonly values: readonly (DifferenceValue | undefined)[]
}

type Said = Omit<PlanDifference, 'values'> & { readonly value: DifferenceValue }

/** Who it is and how its numbers are known is no difference of the layout. */
const silent = new Set(['id', 'name', 'districtId', 'format', 'version', 'evidence', 'notes', 'fillSites', 'dumpSites', 'tenders', 'demand', 'legNotes'])

/**
 * Where plans differ, field by field: sites in the order in which they stand, tenders and ways by whom they are about.
 *
 * @param plans two or more; with fewer nothing differs
 * @returns in the order of the chain; the names of plans and sites, their notes and evidence are left out
 */
export function planDifferences(plans: readonly Plan[]): PlanDifference[] {
  const said = plans.map((plan) => new Map(saidOf(plan).map((one) => [keyOf(one), one])))
  const keys = new Map(said.flatMap((map) => [...map].map(([key, one]): [string, Said] => [key, one])))
  const rows = [...keys.values()].map(({ part, place, itemIds, field }): PlanDifference => ({
    part, field,
    ...(place !== undefined && { place }), ...(itemIds && { itemIds }),
    values: said.map((map) => map.get(keyOf({ part, place, itemIds, field }))?.value),
  }))
  return rows.filter(({ values: [first, ...rest] }) => rest.some((value) => JSON.stringify(value) !== JSON.stringify(first))).sort((a, b) => order(a) - order(b))
}

const parts: readonly DifferencePart[] = ['plan', 'fillSites', 'dumpSites', 'tenders', 'demand', 'legNotes']
const order = ({ part, place = 0 }: PlanDifference): number => parts.indexOf(part) * 1000 + place

const keyOf = ({ part, place, itemIds, field }: { part: DifferencePart; place?: number | undefined; itemIds?: readonly string[] | undefined; field: string }): string => JSON.stringify([part, place ?? 0, itemIds ?? [], field])

function saidOf(plan: Plan): Said[] {
  return [
    ...fieldsOf(plan).map((said): Said => ({ part: 'plan', ...said })),
    ...(['fillSites', 'dumpSites'] as const).flatMap((part) => plan[part].flatMap((site, index) => fieldsOf(site).map((said): Said => ({ part, place: index + 1, ...said })))),
    { part: 'tenders', field: 'tenderIds', value: plan.tenders.map(({ tenderId }) => tenderId as string).sort() },
    ...plan.tenders.flatMap((task) => fieldsOf({ ...task, tenderId: undefined }).map((said): Said => ({ part: 'tenders', itemIds: [task.tenderId], ...said }))),
    ...(plan.demand ?? []).flatMap((stage, index) => fieldsOf(stage).map((said): Said => ({ part: 'demand', place: index + 1, ...said }))),
    ...plan.legNotes.flatMap((note) => {
      const itemIds = [note.fromId, note.toId, ...(note.apparatusId ? [note.apparatusId] : [])]
      const { travel_s, distance_mi, average_mph, via } = note
      return fieldsOf({ travel_s, distance_mi, average_mph, viaCount: via?.length }).map((said): Said => ({ part: 'legNotes', itemIds, ...said }))
    }),
  ]
}

/** What an item says, parts within it by a dotted path, places as text. */
function fieldsOf(item: object, path = ''): { field: string; value: DifferenceValue }[] {
  return Object.entries(item).flatMap(([key, value]: [string, unknown]) => {
    if (path === '' && silent.has(key)) return []
    const field = path + key
    if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return [{ field, value }]
    if (Array.isArray(value)) return value.every((entry) => typeof entry === 'string') ? [{ field, value: value as string[] }] : [{ field: `${field}Count`, value: value.length }]
    if (typeof value !== 'object' || value === null) return []
    if ('lat' in value && 'lon' in value) return [{ field, value: `${Number(value.lat).toFixed(5)}, ${Number(value.lon).toFixed(5)}` }]
    return fieldsOf(value, `${field}.`)
  })
}
