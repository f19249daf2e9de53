import type { EditBody, Source } from '@/lib/plan'
import { findWrittenUnit, plainUnitWord } from '@/lib/written-units'
import { formatQuantity, formatWaterSurface, isTextKey, say, type UnitSystem } from '../_text'
import '../_text/areas/survey'
import type { MapWater } from './map-water'

/** One id for one thing of the map, so that accepting it twice, or on two devices, adds it once. */
export const idOfMapWater = ({ osmId, surface_sqft }: Pick<MapWater, 'osmId' | 'surface_sqft'>): string => `osm-${surface_sqft === undefined ? '' : 'area-'}${osmId}`

/** What it is called: by its own name, else by its kind, its size and the road it lies by. */
export function nameOfMapWater({ name, kind, surface_sqft, road }: MapWater, system: UnitSystem): string {
  if (name !== '') return name
  const words = say(`survey.check.kind.${kind}`)
  const sized = surface_sqft === undefined ? words : say('survey.check.sized', { kind: words, surface: formatWaterSurface(surface_sqft, system) })
  return road?.name ? say('survey.check.near', { what: sized, road: road.name }) : sized
}

/** The edit that takes water of the map into the survey, as something still to be checked on the spot. */
export function acceptEdit(water: MapWater, dataDate: string, system: UnitSystem): EditBody & { kind: 'addItem' } {
  const { osmId, point, details, surface_sqft } = water
  const id = String(osmId)
  const source = dataDate === '' ? say('survey.check.from', { id }) : say('survey.check.from-dated', { id, day: dataDate.slice(0, 10) })
  return {
    kind: 'addItem',
    collection: 'sources',
    item: {
      id: idOfMapWater(water), kind: sourceKindOf(water), point, name: nameOfMapWater(water, system).slice(0, 120),
      notes: details === '' ? say('survey.check.unsurveyed') : say('survey.check.notes', { details: detailWords(details, system) }),
      ...(surface_sqft !== undefined && { surface_sqft: Math.round(surface_sqft) }),
      evidence: { point: { mark: 'assumed', source }, ...(surface_sqft !== undefined && { surface_sqft: { mark: 'computed', source: say('survey.check.area-source') } }) },
    },
  }
}

/** What the data says, in plain words; what has none keeps its own, without the marks of the file. */
export const detailWords = (details: string, system: UnitSystem): string => pairsOf(details).map(([key, value]) => {
  const sized = mappedQuantity(key, value, system)
  const text = `survey.says.${key.replaceAll(':', '-')}`
  const plain = sized ?? (key in mapUnits && /^[\d.]+$/.test(value) ? say('survey.says.no-unit', { value }) : value.replaceAll('_', ' ').replaceAll(';', ', '))
  return isTextKey(text) ? say(text, { value, plain }) : plain
}).join(' · ')

/** What stands behind a bare number of the map, by the convention of its key; without one the number stays as it is. */
const mapUnits: Readonly<Record<string, { readonly unit: 'in' | 'psi' | 'gpm' | 'gal'; readonly bare?: string }>> = {
  'fire_hydrant:diameter': { unit: 'in', bare: 'mm' }, 'couplings:diameters': { unit: 'in', bare: 'mm' }, 'fire_hydrant:pressure': { unit: 'psi', bare: 'bar' },
  flow_rate: { unit: 'gpm' }, volume: { unit: 'gal' }, 'water_tank:volume': { unit: 'gal' },
}

/** Sizes, pressures, flows and volumes of the map in the units in use; undefined where one of them says no unit that is known. */
function mappedQuantity(key: string, value: string, system: UnitSystem): string | undefined {
  const known = mapUnits[key]
  if (!known) return undefined
  const shown = value.split(';').map((part) => {
    const [, digits, word = ''] = /^\s*(\d+(?:\.\d+)?)\s*(\D*)$/.exec(part) ?? []
    const unit = findWrittenUnit(plainUnitWord(word || (known.bare ?? '')), known.unit)
    return digits !== undefined && unit ? formatQuantity(Number(digits) * unit.factor, known.unit, system) : undefined
  })
  return shown.every((one) => one !== undefined) ? shown.join(', ') : undefined
}

/** Pairs of key and value; a value may itself hold semicolons. */
function pairsOf(details: string): [key: string, value: string][] {
  const pairs: [string, string][] = []
  for (const part of details.split(';')) {
    const at = part.indexOf('='), last = pairs.at(-1)
    if (at > 0) pairs.push([part.slice(0, at), part.slice(at + 1)])
    else if (last) last[1] += `;${part}`
  }
  return pairs
}

/** A pond of more than this is called a lake where the map does not say which. Common practice, no source. */
const LAKE_SQFT = 20 * 43_560

/** The kind of source the data most likely means; the officer sets it right on the spot. */
function sourceKindOf({ kind, details, surface_sqft = 0 }: MapWater): Source['kind'] {
  switch (kind) {
    case 'hydrant': return 'pressureHydrant'
    case 'pondHydrant': return 'dryHydrant'
    case 'tank': case 'cistern': case 'pool': return 'cistern'
    case 'pond': case 'pondArea': return 'pond'
    case 'lakeArea': return 'lake'
    case 'reservoirArea': case 'basinArea': case 'waterArea': return surface_sqft > LAKE_SQFT ? 'lake' : 'pond'
    case 'suctionPoint': return /water_source=(stream|river|canal)/.test(details) ? 'stream' : /water_source=lake/.test(details) ? 'lake' : 'pond'
  }
}
