import type { Bundle, Pumper, Tender } from '../../plan'
import { coefficientOfSize, hoseOfSize, LEAST_SUPPLY_IN } from '../../supply'

/** Hose of one size, all of it together. */
export type HoseSize = { readonly size_in: number; readonly length_ft: number; readonly coefficient: number }

/** What may be sent: pumpers without the first-due engine, by falling rating; tenders with a tank, by falling tank; hose, by rising friction. */
export type Equipment = { readonly pumpers: readonly Pumper[]; readonly tenders: readonly Tender[]; readonly hose: readonly HoseSize[] }

/**
 * The equipment of a district that a comparison may use.
 *
 * A pumper's supply hose counts where no piece of equipment of that size is said to be on it, as for a hose lay.
 *
 * @param leftOut ids of apparatus that stays at home; hose aboard it too
 */
export function equipmentOf({ district, plan }: Pick<Bundle, 'district' | 'plan'>, leftOut: ReadonlySet<string> = new Set()): Equipment {
  const here = district.apparatus.filter(({ id }) => id !== plan.firstDueId && !leftOut.has(id))
  const pumpers = here.flatMap((unit) => (unit.kind === 'pumper' && unit.rated_gpm ? [unit] : [])).sort((a, b) => (b.rated_gpm ?? 0) - (a.rated_gpm ?? 0))
  const tenders = here.flatMap((unit) => (unit.kind === 'tender' && unit.tank_gal ? [unit] : [])).sort((a, b) => (b.tank_gal ?? 0) - (a.tank_gal ?? 0))
  const lengths_ft = new Map<number, number>()
  const add = (size_in: number, length_ft: number) => { lengths_ft.set(size_in, (lengths_ft.get(size_in) ?? 0) + length_ft) }
  for (const item of district.equipment) if (item.kind === 'hose' && !(item.carriedBy !== undefined && (leftOut.has(item.carriedBy) || item.carriedBy === plan.firstDueId))) add(item.size_in, item.length_ft)
  for (const { id, supplyHose_in, supplyHose_ft } of pumpers)
    if (supplyHose_in !== undefined && supplyHose_ft && !hoseOfSize(district, supplyHose_in).some(({ carriedBy }) => carriedBy === id)) add(supplyHose_in, supplyHose_ft)
  const hose = [...lengths_ft].map(([size_in, length_ft]) => ({ size_in, length_ft, coefficient: coefficientOfSize(district, size_in).coefficient })).sort((a, b) => a.coefficient - b.coefficient)
  return { pumpers, tenders, hose }
}

const MOST_LINES = 4

export type StretchChoice = { readonly size_in: number; readonly length_ft: number; readonly lineCount: number }

/**
 * Hose for a lay out of what there is: of the size with least friction as many lines as reach all the way, else that size as far
 * as it goes and the next from there.
 *
 * @returns stretches from the source on; empty where the hose does not reach
 */
export function stretchesFor(hose: readonly HoseSize[], length_ft: number): StretchChoice[] {
  const chosen: StretchChoice[] = []
  let left_ft = length_ft
  for (const { size_in, length_ft: have_ft } of hose) {
    if (size_in < LEAST_SUPPLY_IN || have_ft < 1) continue
    const lineCount = chosen.length === 0 ? Math.max(1, Math.min(MOST_LINES, Math.floor(have_ft / length_ft))) : Math.max(1, Math.min(MOST_LINES, Math.floor(have_ft / left_ft)))
    const laid_ft = Math.min(left_ft, have_ft)
    chosen.push({ size_in, length_ft: laid_ft, lineCount })
    left_ft -= laid_ft
    if (left_ft < 1) return chosen
  }
  return []
}

/** All hose that may be laid. [ft] */
export const supplyHose_ft = (hose: readonly HoseSize[]): number => hose.reduce((sum, { size_in, length_ft }) => sum + (size_in < LEAST_SUPPLY_IN ? 0 : length_ft), 0)
