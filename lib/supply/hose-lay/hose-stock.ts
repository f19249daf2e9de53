import { findApparatus, isCounted, type Bundle, type District, type Lay } from '../../plan'
import { startLedger } from '../ledger'
import { wayDistances_ft } from './lay-ground'
import { hoseOfSize, layHose, sameSize, type LaidStretch } from './lay-hose'

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Feet of hose by size, and the first of the lays that took some of it. */
export type HoseTaken = ReadonlyMap<number, { readonly taken_ft: number; readonly byId: string }>

/** Less than this is rounding, not hose. [ft] */
const ROUNDING_FT = 0.5

/** Hose of a size on a unit: as equipment, else its supply hose. The same hose is not counted twice. [ft] */
export function hoseOnUnit_ft(district: District, unitId: string, size_in: number): number {
  const pieces = hoseOfSize(district, size_in).filter(({ carriedBy }) => carriedBy === unitId)
  if (pieces.length > 0) return pieces.reduce((sum, { length_ft }) => sum + length_ft, 0)
  const unit = findApparatus({ district }, unitId)
  return unit?.kind === 'pumper' && unit.supplyHose_in !== undefined && sameSize(unit.supplyHose_in, size_in) ? (unit.supplyHose_ft ?? 0) : 0
}

/** Hose of a size in the whole district, on units and off them. [ft] */
export function hoseOfDistrict_ft(district: District, size_in: number): number {
  const loose_ft = hoseOfSize(district, size_in).filter(({ carriedBy }) => carriedBy === undefined).reduce((sum, { length_ft }) => sum + length_ft, 0)
  return loose_ft + district.apparatus.reduce((sum, { id }) => sum + hoseOnUnit_ft(district, id, size_in), 0)
}

/** Whether the district lists any hose at all; where it lists none nobody has said what there is. */
export const listsHose = ({ equipment, apparatus }: District): boolean =>
  equipment.some(({ kind }) => kind === 'hose') || apparatus.some((unit) => unit.kind === 'pumper' && (unit.supplyHose_ft ?? 0) > 0)

/** Hose of each size that stretches take, all their lines, by falling size. */
export function hoseBySize(stretches: readonly Pick<LaidStretch, 'size_in' | 'length_ft' | 'lineCount'>[]): { readonly size_in: number; readonly needed_ft: number }[] {
  const sizes = [...new Set(stretches.map(({ size_in }) => size_in))].sort((a, b) => b - a)
  return sizes.map((size_in) => ({ size_in, needed_ft: stretches.filter((one) => one.size_in === size_in).reduce((sum, { length_ft, lineCount }) => sum + length_ft * lineCount, 0) }))
}

/** Whether hose of a size goes as far as it must, once others have theirs. */
export const isEnough = (needed_ft: number, district_ft: number, taken_ft: number): boolean => needed_ft <= district_ft - taken_ft + ROUNDING_FT

/**
 * Hose that is gone when a lay's turn comes. The lays of a plan take the district's hose in the order in which they stand in the plan; one
 * that finds too little of any size takes none, and the next has its chance. A lay left out by hand takes none.
 *
 * @returns by size; empty for the first lay
 */
export function hoseTakenBefore({ district, plan }: Docs, lay: Pick<Lay, 'id'>): HoseTaken {
  const taken = new Map<number, { taken_ft: number; byId: string }>()
  for (const other of plan.hoseLays ?? []) {
    if (other.id === lay.id) break
    if (!isCounted(other)) continue
    const needs = hoseBySize(layHose(district, startLedger(), other, wayDistances_ft(other.points).at(-1) ?? 0).stretches)
    if (!needs.every(({ size_in, needed_ft }) => isEnough(needed_ft, hoseOfDistrict_ft(district, size_in), taken.get(size_in)?.taken_ft ?? 0))) continue
    for (const { size_in, needed_ft } of needs) {
      const before = taken.get(size_in)
      taken.set(size_in, { taken_ft: (before?.taken_ft ?? 0) + needed_ft, byId: before?.byId ?? other.id })
    }
  }
  return taken
}
