import { issue, type Issue } from '../../issue'
import { findApparatus, type District } from '../../plan'
import type { LaidStretch } from './lay-hose'
import { hoseOfSize } from './lay-hose'

/** Hose of one size that a lay takes, against what there is. */
export type HoseNeed = {
  readonly size_in: number
  readonly needed_ft: number
  /** On the pumpers of the lay. */
  readonly carried_ft: number
  /** In the whole district, theirs counted. */
  readonly district_ft: number
}

export type HoseNeeds = { readonly needs: readonly HoseNeed[]; readonly issues: readonly Issue[] }

/**
 * Hose of each size that a lay takes, against what its pumpers carry and what the district has.
 *
 * A pumper's supply hose counts where no piece of equipment of that size is said to be on it: the same hose is not counted twice.
 *
 * @returns by falling size; issues `lay-hose-beyond-district`, `lay-hose-beyond-pumpers` (warn)
 */
export function hoseNeeded(district: District, layId: string, stretches: readonly LaidStretch[], pumperIds: readonly string[]): HoseNeeds {
  const sizes = [...new Set(stretches.map(({ size_in }) => size_in))].sort((a, b) => b - a)
  const needs = sizes.map((size_in): HoseNeed => {
    const stock = hoseOfSize(district, size_in)
    const onUnit_ft = (id: string): number => {
      const pieces = stock.filter(({ carriedBy }) => carriedBy === id)
      if (pieces.length > 0) return pieces.reduce((sum, { length_ft }) => sum + length_ft, 0)
      const unit = findApparatus({ district }, id)
      return unit?.kind === 'pumper' && unit.supplyHose_in !== undefined && Math.abs(unit.supplyHose_in - size_in) < 0.01 ? (unit.supplyHose_ft ?? 0) : 0
    }
    const loose_ft = stock.filter(({ carriedBy }) => carriedBy === undefined).reduce((sum, { length_ft }) => sum + length_ft, 0)
    return {
      size_in,
      needed_ft: stretches.filter((one) => one.size_in === size_in).reduce((sum, { length_ft, lineCount }) => sum + length_ft * lineCount, 0),
      carried_ft: [...new Set(pumperIds)].reduce((sum, id) => sum + onUnit_ft(id), 0),
      district_ft: loose_ft + district.apparatus.reduce((sum, { id }) => sum + onUnit_ft(id), 0),
    }
  })
  const issues = needs.flatMap(({ size_in, needed_ft, carried_ft, district_ft }) => {
    if (needed_ft > district_ft) return [issue('lay-hose-beyond-district', 'warn', [layId], { size_in, needed_ft, district_ft })]
    return needed_ft > carried_ft ? [issue('lay-hose-beyond-pumpers', 'warn', [layId], { size_in, needed_ft, carried_ft })] : []
  })
  return { needs, issues }
}
