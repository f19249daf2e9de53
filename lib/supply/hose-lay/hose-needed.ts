import { issue, type Issue } from '../../issue'
import type { Bundle, Lay } from '../../plan'
import { hoseBySize, hoseOfDistrict_ft, hoseOnUnit_ft, hoseTakenBefore, isEnough, listsHose } from './hose-stock'
import type { LaidStretch } from './lay-hose'

/** Hose of one size that a lay takes, against what there is. */
export type HoseNeed = {
  readonly size_in: number
  readonly needed_ft: number
  /** On the pumpers of the lay. */
  readonly carried_ft: number
  /** In the whole district, theirs counted. */
  readonly district_ft: number
  /** Of that, laid already by lays that stand before it in the plan. */
  readonly taken_ft: number
}

export type HoseNeeds = { readonly needs: readonly HoseNeed[]; readonly issues: readonly Issue[] }

const lacking: ReadonlySet<string> = new Set(['lay-hose-beyond-district', 'lay-hose-taken'])

/** Whether an issue says that a lay's hose is not there: it cannot be laid and brings nothing. */
export const isHoseLacking = ({ code }: Pick<Issue, 'code'>): boolean => lacking.has(code)

/**
 * Hose of each size that a lay takes, against what its pumpers carry, what the district lists, and what lays before it in the plan have
 * laid. Hose of fill lines and attack lines is not counted.
 *
 * @returns by falling size; issues `lay-hose-beyond-district`, `lay-hose-taken`, `lay-hose-beyond-pumpers`, and `lay-hose-unlisted` where the
 *   district lists no hose of any size, so that nobody has said what there is (warn)
 */
export function hoseNeeded(docs: Pick<Bundle, 'district' | 'plan'>, lay: Pick<Lay, 'id' | 'pumperIds'>, stretches: readonly LaidStretch[]): HoseNeeds {
  const { district } = docs
  const taken = hoseTakenBefore(docs, lay)
  const needs = hoseBySize(stretches).map(({ size_in, needed_ft }): HoseNeed => ({
    size_in, needed_ft,
    carried_ft: [...new Set(lay.pumperIds)].reduce((sum, id) => sum + hoseOnUnit_ft(district, id, size_in), 0),
    district_ft: hoseOfDistrict_ft(district, size_in),
    taken_ft: taken.get(size_in)?.taken_ft ?? 0,
  }))
  if (!listsHose(district)) return { needs, issues: needs.map(({ size_in, needed_ft }) => issue('lay-hose-unlisted', 'warn', [lay.id], { size_in, needed_ft })) }
  const issues = needs.flatMap(({ size_in, needed_ft, carried_ft, district_ft, taken_ft }) => {
    if (!isEnough(needed_ft, district_ft, 0)) return [issue('lay-hose-beyond-district', 'warn', [lay.id], { size_in, needed_ft, district_ft })]
    if (!isEnough(needed_ft, district_ft, taken_ft)) return [issue('lay-hose-taken', 'warn', [lay.id, taken.get(size_in)?.byId ?? lay.id], { size_in, needed_ft, district_ft, taken_ft })]
    return needed_ft > carried_ft ? [issue('lay-hose-beyond-pumpers', 'warn', [lay.id], { size_in, needed_ft, carried_ft })] : []
  })
  return { needs, issues }
}
