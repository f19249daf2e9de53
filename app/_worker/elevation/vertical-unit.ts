import { metresInUnit, type GeoKeys } from './raster-projection'

/** Vertical systems that fix the unit: NAVD 88 in metres, US survey feet and feet; EGM96, EGM2008 in metres. EPSG, from memory. */
const unitOfSystem: Readonly<Record<number, number>> = { 5703: 1, 6360: 1200 / 3937, 8228: 0.3048, 5773: 1, 3855: 1, 5621: 1, 5783: 1 }

const unitOfWord = (word: string): number | undefined => {
  const plain = word.trim().toLowerCase()
  if (/^(?:m|met(?:re|er)s?)$/.test(plain)) return 1
  if (/^(?:us[ _-]?survey[ _-]?f(?:oo|ee)t|ftus|us-ft)$/.test(plain)) return 1200 / 3937
  if (/^(?:ft|f(?:oo|ee)t|international foot)$/.test(plain)) return 0.3048
  return undefined
}

/**
 * Metres in the unit of a GeoTIFF's heights: by its vertical unit, else its vertical system, else its band's unit word,
 * else its horizontal unit where that is feet; a file that says nothing of it is taken for metres and marked so.
 */
export function verticalUnit(keys: GeoKeys, bandUnit: unknown): { readonly unit_m: number; readonly assumedUnit?: 'm' | 'ft' } {
  const stated = metresInUnit[Number(keys['VerticalUnitsGeoKey'])] ?? unitOfSystem[Number(keys['VerticalCSTypeGeoKey'])] ??
    (typeof bandUnit === 'string' ? unitOfWord(bandUnit) : undefined)
  if (stated !== undefined) return { unit_m: stated }
  const unit_m = metresInUnit[Number(keys['ProjLinearUnitsGeoKey'])] ?? 1
  return { unit_m, assumedUnit: unit_m === 1 ? 'm' : 'ft' }
}
