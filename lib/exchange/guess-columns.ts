import { findUnit, type Unit } from '../units'
import { findWrittenUnit, plainUnitWord, writtenUnits } from '../written-units'
import { mappableFields, ownColumns, usualUnit, type ColumnUse } from './mapping'
import type { FoundFeature, ItemList } from './place'

export type GuessOptions = {
  readonly list: ItemList
  readonly isMetric: boolean
  readonly features: readonly FoundFeature[]
  /** What a field is called on screen: a column may be called the same. */
  readonly labelOf: (path: string) => string
}

/** Words of others for what every place has, first best. */
const ends: Readonly<Record<string, readonly string[]>> = {
  name: ['name', 'title', 'label', 'site name', 'location name', 'site', 'location', 'facility', 'business name'],
  notes: ['notes', 'note', 'comments', 'comment', 'remarks', 'description', 'desc', 'cmt', 'details'],
  lat: ['lat', 'latitude', 'y', 'ycoord', 'y coord', 'point y', 'lat dd', 'breite'],
  lon: ['lon', 'long', 'lng', 'longitude', 'x', 'xcoord', 'x coord', 'point x', 'long dd', 'lon dd'],
  latLon: ['lat lon', 'lat long', 'lat lng', 'latlon', 'latlong', 'coordinates', 'coords', 'gps', 'position', 'gps coordinates'],
  shape: ['wkt', 'geom', 'geometry', 'the geom', 'shape wkt'],
}

/** Words of others for fields, beside their own names and labels. */
const fields: Readonly<Record<string, readonly string[]>> = {
  kind: ['kind', 'type', 'category', 'class', 'source type', 'water type', 'water source type', 'sym'],
  usable_gal: ['volume', 'capacity', 'usable', 'usable volume', 'gallons', 'litres', 'liters', 'water available', 'storage'],
  surface_sqft: ['area', 'surface', 'surface area', 'acres', 'acreage', 'hectares'],
  deepest_ft: ['depth', 'max depth', 'maximum depth'],
  inflow_gpm: ['inflow', 'flow', 'flow rate', 'stream flow', 'discharge'],
  test_gpm: ['test flow', 'flow test', 'hydrant flow', 'tested flow', 'pitot flow'],
  static_psi: ['static', 'static pressure'],
  residual_psi: ['residual', 'residual pressure'],
  testedOn: ['tested', 'test date', 'last tested', 'last test', 'flow test date'],
  inspectionDue: ['inspection due', 'next inspection'],
  certifiedOn: ['certified', 'certification date'],
  access: ['access', 'access notes', 'directions'],
  surfaceElevation_ft: ['water elevation', 'surface elevation', 'ele', 'elevation'],
  lift_ft: ['lift', 'static lift', 'vertical lift', 'suction lift'],
  waterDepth_ft: ['depth', 'water depth'],
  hoseRun_ft: ['suction hose', 'hose run', 'hard suction'],
  ground: ['surface', 'ground', 'road surface', 'footing'],
  sourceId: ['source', 'water source', 'pond', 'on source'],
  turnRound: ['turn round', 'turnaround', 'turn around'],
  needed_gpm: ['needed', 'needed flow', 'needed fire flow', 'nff', 'fire flow', 'required flow', 'flow'],
  length_ft: ['length', 'building length'],
  width_ft: ['width', 'building width'],
  storeyCount: ['storeys', 'stories', 'floors', 'levels'],
  storeyHeight_ft: ['storey height', 'story height'],
  occupancyClass: ['occupancy', 'occupancy class', 'hazard class'],
  constructionType: ['construction', 'construction type', 'construction class'],
  exposureCount: ['exposures'],
  isSprinklered: ['sprinklered', 'sprinklers', 'sprinkler'],
  maxWeight_lb: ['weight limit', 'posted weight', 'max weight', 'posting'],
  maxHeight_ft: ['clearance', 'height limit', 'max height', 'vertical clearance'],
  maxWidth_ft: ['width limit', 'max width'],
  speed_mph: ['speed', 'speed limit'],
  closed: ['closed', 'closure'],
  turnout_s: ['turnout', 'turnout time'],
  mutualAid: ['mutual aid'],
}

/** A name as words: parts of `camelCase` and `snake_case` apart, what stands in brackets gone. */
const wordsOf = (text: string): string =>
  text.replace(/[([{].*?[)\]}]/g, ' ').replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim()

/**
 * What the columns of another's file most likely are. Each end is given to one column; what is not known stays out, and
 * nothing is certain: a person sets it right before anything is taken.
 */
export function guessColumns(columns: readonly string[], { list, isMetric, features, labelOf }: GuessOptions): Record<string, ColumnUse> {
  const own = ownColumns(columns.filter((column) => findUnit(column) !== undefined), list)
  const uses: Record<string, ColumnUse> = { ...own }
  const taken = new Set(Object.values(own).map(({ to }) => to))
  const offers = [
    ...Object.entries(ends).flatMap(([to, words]) => words.map((word, rank) => ({ to, word, rank, unit: undefined as Unit | undefined }))),
    ...mappableFields(list).flatMap(({ path, unit }) => [wordsOf(labelOf(path)), ...(unit ? [wordsOf(path.slice(0, path.lastIndexOf('_')))] : [wordsOf(path)]), ...(fields[path] ?? [])].map((word, rank) => ({ to: path, word, rank, unit }))),
  ].sort((a, b) => a.rank - b.rank)
  for (const isExact of [true, false])
    for (const offer of offers) {
      if (taken.has(offer.to)) continue
      const column = columns.find((one) => !(one in uses) && fits(one, offer, isExact))
      if (column === undefined) continue
      taken.add(offer.to)
      uses[column] = { to: offer.to, ...formOf(column, offer, isMetric, features) }
    }
  return withoutHalves(uses)
}

/** The name is the word, or the word and then a unit of its quantity. */
function fits(column: string, { word, unit }: { word: string; unit: Unit | undefined }, isExact: boolean): boolean {
  const name = wordsOf(column)
  if (name === word) return true
  if (isExact || !unit || !name.startsWith(`${word} `)) return false
  return findWrittenUnit(plainUnitWord(name.slice(word.length)), unit) !== undefined
}

function formOf(column: string, { to, unit }: { to: string; unit: Unit | undefined }, isMetric: boolean, features: readonly FoundFeature[]): { unit?: string } {
  if (/(?:On|Due)$/.test(to)) return { unit: dayOrderOf(column, features) }
  if (!unit) return {}
  return { unit: statedUnit(column, unit) ?? usualUnit(unit, isMetric) }
}

/** The unit that a column's name says, in brackets or at its end. */
function statedUnit(column: string, unit: Unit): string | undefined {
  const [, bracketed] = /[([{]\s*(.*?)\s*[)\]}]/.exec(column) ?? []
  const words = wordsOf(column).split(' ')
  const tries = [bracketed, words.slice(-2).join(''), words.at(-1), ...(words.length > 2 ? [words.slice(-3).join('')] : [])]
  for (const word of tries) {
    const found = word !== undefined && word !== '' ? findWrittenUnit(plainUnitWord(word), unit) : undefined
    if (found) return found.words[0]
  }
  const perMinute = writtenUnits[unit].find(({ words: spelled }) => spelled.some((one) => one.includes('/') && wordsOf(one) === words.slice(-2).join(' ')))
  return perMinute?.words[0]
}

/** Days above 12 show by their number which comes first; a full stop between them is written where the day does. */
function dayOrderOf(column: string, features: readonly FoundFeature[]): string {
  const texts = features.slice(0, 500).map(({ values }) => String(values[column] ?? ''))
  const count = (pattern: RegExp): number => texts.filter((text) => pattern.test(text)).length
  const dayFirst = count(/^(?:1[3-9]|2\d|3[01])[-/.]\d{1,2}[-/.]\d{4}/), monthFirst = count(/^\d{1,2}[-/.](?:1[3-9]|2\d|3[01])[-/.]\d{4}/)
  if (dayFirst > monthFirst || (dayFirst === monthFirst && count(/^\d{1,2}\.\d{1,2}\.\d{4}/) > 0)) return 'day/month/year'
  return count(/^\d{1,2}[-/.]\d{1,2}[-/.]\d{4}/) > 0 ? 'month/day/year' : 'year-month-day'
}

/** One coordinate without the other says nothing; both apart are better than both in one. */
function withoutHalves(uses: Record<string, ColumnUse>): Record<string, ColumnUse> {
  const has = (to: string): boolean => Object.values(uses).some((use) => use.to === to)
  const isPair = has('lat') && has('lon')
  return Object.fromEntries(Object.entries(uses).filter(([, { to }]) => (to === 'lat' || to === 'lon' ? isPair : to !== 'latLon' || !isPair)))
}
