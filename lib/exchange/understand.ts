import type { Evidence } from '../evidence'
import { distanceM, findBounds, type Bounds, type Point } from '../geo'
import { issue } from '../issue'
import { findItemSchema, issuesFromZod } from '../plan'
import { milesFromMetres } from '../units'
import { KnownPlaces, type Match } from './find-match'
import { fieldsOf } from './list-fields'
import { ownColumns, type Mapping } from './mapping'
import { ownValues } from './own-values'
import { placeItem, type Target } from './place-item'
import { idsOf } from './target-ids'
import { districtLists, isDistrictList, isPlaceList, type FoundFeature, type ItemList, type PlaceList } from './place'
import { readFeature, type Problem } from './read-feature'
import type { FoundFile } from './read-report'

/** A place that can be taken in, and what is there already that may be the same. */
export type Candidate = {
  readonly at: number
  readonly list: ItemList | 'fireGround'
  /** Whole and checked. Its id is its own from our file, else yet to be given. */
  readonly item: Readonly<Record<string, unknown>> & { readonly id?: string; readonly name: string }
  readonly point: Point
  readonly match?: Match
  /** Far from all that the district has, in a straight line: most likely a wrong coordinate. */
  readonly far_mi?: number
  /** It would not be far with latitude and longitude exchanged. */
  readonly looksSwapped?: boolean
  /** An earlier row that says the same. */
  readonly repeats?: number
  /** Fields that an update would change. */
  readonly changes: readonly string[]
}

export type UnderstandOptions = {
  readonly target: Target
  /** For features that are not ours; absent while a person has not said what they are. */
  readonly mapping?: Mapping
  /** How the numbers of the file are known. */
  readonly evidence?: Omit<Evidence, 'entered'>
  /** What a place without a name is called. */
  readonly nameOf: (list: PlaceList, at: number) => string
}

export type Understood = { readonly candidates: readonly Candidate[]; readonly problems: readonly Problem[] }

/** True when a feature comes from our own file: it says of which list it is. */
export const isOwn = ({ values }: FoundFeature): boolean => isPlaceList(values.list) && values.id !== undefined

/**
 * What a file would bring, and every row that cannot be read or used, before anything is stored. No row is half taken:
 * one bad cell keeps its row out.
 */
export function understand(file: FoundFile, { target, mapping, evidence, nameOf }: UnderstandOptions): Understood {
  const problems: Problem[] = []
  const candidates: Candidate[] = []
  const earlier = new Map<string, { places: KnownPlaces; rows: Map<string, number> }>()
  const there = new Map<ItemList, KnownPlaces>()
  const ownUses = new Map<ItemList, Mapping['columns']>()
  const ground = groundOf(target)
  const planNames = new Set(file.features.flatMap(({ values }) => (values.plan === undefined || values.list === 'ways' ? [] : [String(values.plan)])))
  const knownIds = idsOf(target)
  for (const feature of file.features) if (isOwn(feature)) knownIds.add(String(feature.values.id))
  for (const feature of file.features) {
    const own = isOwn(feature) ? (feature.values.list as PlaceList) : undefined
    const list = own ?? mapping?.list
    const say = (code: string, severity: 'block' | 'note', values: Record<string, string | number> = {}): void => {
      problems.push({ at: feature.at, name: String(feature.values.name ?? ''), issue: issue(code, severity, [], values) })
    }
    if (list === undefined) continue
    if (list === 'ways') { say('exchange-way-left', 'note'); continue }
    if (!isDistrictList(list) && !target.plan) { say('exchange-no-plan', 'block'); continue }
    if (own && planNames.size > 1 && feature.values.plan !== undefined && feature.values.plan !== target.plan?.name) { say('exchange-other-plan', 'note', { plan: String(feature.values.plan) }); continue }
    const made = list === 'fireGround' ? fireGroundFrom(feature) : itemFrom(own ? ownValues(feature, list) : feature, list, own ? { list, decimal: '.', columns: cached(ownUses, list, () => ownColumns([...file.columns, ...fieldsOf(list).map(({ path }) => path)], list)), isOwn: true } : mapping, { target, evidence, nameOf, knownIds })
    problems.push(...made.problems)
    if (!made.candidate) continue
    const { item, point } = made.candidate
    const match = list === 'fireGround' ? fireGroundMatch(target) : cached(there, list, () => knownOf(target, list)).findMatch({ ...(own && { id: String(item.id) }), name: item.name, point: list === 'legNotes' ? undefined : point })
    const before = cached(earlier, list, () => ({ places: new KnownPlaces(), rows: new Map<string, number>() }))
    const repeat = list === 'legNotes' ? undefined : before.places.findMatch({ ...(item.id !== undefined && { id: item.id }), name: item.name, point })
    const repeats = repeat && before.rows.get(repeat.id)
    candidates.push({ ...made.candidate, ...farFrom(ground, point), ...(match && { match }), ...(repeats !== undefined && { repeats }), changes: match ? changesOf(itemOf(target, list, match.id), item) : [] })
    const ownId = item.id ?? `row ${before.rows.size}`
    before.places.add({ id: ownId, name: item.name, point })
    before.rows.set(ownId, feature.at)
  }
  return { candidates, problems }
}

function cached<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const kept = map.get(key) ?? make()
  map.set(key, kept)
  return kept
}

type Made = { candidate?: Omit<Candidate, 'match' | 'changes'>; problems: Problem[] }

function itemFrom(feature: FoundFeature, list: ItemList, mapping: Mapping | undefined, { target, evidence, nameOf, knownIds }: Pick<UnderstandOptions, 'target' | 'evidence' | 'nameOf'> & { knownIds: ReadonlySet<string> }): Made {
  if (!mapping) return { problems: [] }
  const { draft, problems } = readFeature(feature, mapping)
  const { at, fields, entered, notes } = draft
  const own = isOwn(feature)
  const block = (code: string, values: Record<string, string | number> = {}, column?: string): Made =>
    ({ problems: [...problems, { at, name: draft.name, ...(column !== undefined && { column }), issue: issue(code, 'block', [], values) }] })
  if (problems.length > 0 || !draft.shape) return { problems }
  const placed = placeItem(list, draft.shape, fields, target)
  if ('code' in placed) return { problems: [{ at, name: draft.name, issue: placed }] }
  const linked = own ? withKnown(fields, knownIds) : withSource(fields, target)
  for (const text of linked.left) problems.push({ at, name: draft.name, issue: own ? issue('exchange-link-left', 'warn', [], { text }) : issue('exchange-source-unknown', 'warn', [], { text }) })
  const name = draft.name || nameOf(list, at)
  const item = {
    ...(own && { id: String(feature.values.id) }),
    ...(list !== 'legNotes' && { name: name.slice(0, 120) }),
    ...linked.fields, ...placed.fields,
    ...(notes !== undefined && { notes }),
    ...(!own && evidence && { evidence: evidenceOf(placed.fields, fields, entered, evidence) }),
  }
  const schema = findItemSchema(isDistrictList(list) ? 'district' : 'plan', list)
  const parsed = schema?.safeParse({ ...item, id: own ? String(feature.values.id) : 'new' })
  if (!parsed?.success) {
    const [first] = parsed ? issuesFromZod(parsed.error, '', item) : []
    return block('exchange-not-held', { path: String(first?.values.path ?? '') })
  }
  const whole = parsed.data as { id: string; name?: string }
  return { problems, candidate: { at, list, point: placed.point, item: { ...whole, id: own ? whole.id : undefined, name: whole.name ?? name } as Candidate['item'] } }
}

/** The source that a draft site lies on, which others name and we number. */
function withSource(fields: Readonly<Record<string, unknown>>, { district }: Target): { fields: Readonly<Record<string, unknown>>; left: string[] } {
  const { sourceId, ...rest } = fields
  if (typeof sourceId !== 'string') return { fields, left: [] }
  const found = district.sources.find(({ id, name }) => id === sourceId || name.trim().toLowerCase() === sourceId.trim().toLowerCase())
  return found ? { fields: { ...rest, sourceId: found.id }, left: [] } : { fields: rest, left: [sourceId] }
}

/** What our own file refers to and neither it nor the target has is left out. */
function withKnown(fields: Readonly<Record<string, unknown>>, knownIds: ReadonlySet<string>): { fields: Readonly<Record<string, unknown>>; left: string[] } {
  const left: string[] = []
  const isKnown = (id: unknown): boolean => {
    if (typeof id !== 'string' || knownIds.has(id)) return true
    left.push(id)
    return false
  }
  const kept = Object.entries(fields).flatMap(([field, value]): [string, unknown][] => {
    if (/Ids$/.test(field) && Array.isArray(value)) return [[field, value.filter(isKnown)]]
    return /Id$/.test(field) && !isKnown(value) ? [] : [[field, value]]
  })
  return { fields: Object.fromEntries(kept), left }
}

function evidenceOf(placed: Readonly<Record<string, unknown>>, fields: Readonly<Record<string, unknown>>, entered: Readonly<Record<string, string>>, evidence: Omit<Evidence, 'entered'>): Record<string, Evidence> {
  const known: Record<string, Evidence> = {}
  if ('point' in placed) known.point = evidence
  for (const field of ['surface_sqft', 'travel_s', 'distance_mi']) if (field in placed) known[field] = field === 'surface_sqft' ? { ...evidence, mark: 'computed' } : evidence
  for (const [field, text] of Object.entries(entered)) if (field in fields) known[field] = { ...evidence, entered: text }
  return known
}

function fireGroundFrom({ at, values, shape }: FoundFeature): Made {
  const name = String(values.name ?? '')
  const lat = Number(values.lat), lon = Number(values.lon)
  const point = shape?.kind === 'point' ? shape.point : { lat, lon }
  if (!(Math.abs(point.lat) <= 90 && Math.abs(point.lon) <= 180)) return { problems: [{ at, name, issue: issue('exchange-no-place', 'block') }] }
  return { problems: [], candidate: { at, list: 'fireGround', point, item: { id: 'fireGround', name, point } } }
}

const fireGroundMatch = ({ plan }: Target): Match | undefined => (plan?.fireGround ? { id: 'fireGround', name: '', by: 'id', away_m: 0 } : undefined)

function knownOf(target: Target, list: ItemList): KnownPlaces {
  const items = (isDistrictList(list) ? target.district[list] : (target.plan?.[list] ?? [])) as readonly { id: string; name?: string; point?: Point; points?: readonly Point[] }[]
  const places = new KnownPlaces()
  for (const { id, name = '', point, points } of items) places.add({ id, name, ...((point ?? points?.[0]) && { point: point ?? points?.[0] }) })
  return places
}

/** An item that is there already; undefined where it is not, or its list is not. */
export function itemOf(target: Target, list: ItemList | 'fireGround', id: string): Readonly<Record<string, unknown>> | undefined {
  if (list === 'fireGround') return target.plan?.fireGround && { point: target.plan.fireGround }
  const items = (isDistrictList(list) ? target.district[list] : target.plan?.[list]) as readonly { id: string }[] | undefined
  return items?.find((item) => item.id === id)
}

/** Fields of the file that differ from what is there. What the file does not say stays; an item keeps its id and kind for life. */
function changesOf(there: Readonly<Record<string, unknown>> | undefined, item: Readonly<Record<string, unknown>>): string[] {
  return Object.keys(item).filter((field) => !['id', 'kind', 'evidence'].includes(field) && item[field] !== undefined && (field !== 'name' || there?.name !== undefined) && !isSame(there?.[field], item[field]))
}

/** The same but for the last digits, which a table in metric units rounds off. */
const isSame = (a: unknown, b: unknown): boolean => {
  if (a === b) return true
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b))
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  const keys = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...keys].every((key) => isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]))
}

/** Nothing a district plans with lies farther from its own ground. Common practice, no source. */
const FAR_MI = 30

/** Ground that the district covers, as far as it is known. */
function groundOf({ district }: Target): Bounds | undefined {
  return district.bounds ?? findBounds(districtLists.flatMap((list) => district[list].map(({ point }) => point)))
}

const away_mi = ({ south, west, north, east }: Bounds, point: Point): number =>
  milesFromMetres(distanceM(point, { lat: Math.min(north, Math.max(south, point.lat)), lon: Math.min(east, Math.max(west, point.lon)) }))

function farFrom(ground: Bounds | undefined, point: Point): Pick<Candidate, 'far_mi' | 'looksSwapped'> {
  const far_mi = ground ? away_mi(ground, point) : 0
  if (!ground || far_mi <= FAR_MI) return {}
  const isReal = Math.abs(point.lon) <= 90
  return { far_mi, ...(isReal && away_mi(ground, { lat: point.lon, lon: point.lat }) <= FAR_MI && { looksSwapped: true }) }
}
