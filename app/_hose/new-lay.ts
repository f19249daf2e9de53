import { distanceM } from '@/lib/geo'
import type { District, Lay, Plan } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import type { LayEnd } from './lay-ends'

/**
 * A lay to begin with: from the water nearest to the first goal, by a pumper that the plan does not use, of the hose the
 * district has most of.
 *
 * @returns undefined where there is nowhere to begin or to end
 */
export function newLay({ district, plan, begins, goals, name, newId }: { district: District; plan: Plan; begins: readonly LayEnd[]; goals: readonly LayEnd[]; name: string; newId: () => string }): Lay | undefined {
  const [goal] = goals
  const begin = goal && begins.reduce<LayEnd | undefined>((best, one) => (best && distanceM(best.point, goal.point) <= distanceM(one.point, goal.point) ? best : one), undefined)
  if (!begin) return undefined
  const busy = new Set<string | undefined>([plan.firstDueId, ...[...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId), ...(plan.hoseLays ?? []).flatMap(({ pumperIds }) => pumperIds)])
  const free = district.apparatus.filter(({ kind, id }) => kind === 'pumper' && !busy.has(id))
  return {
    id: newId(), name, fromId: begin.id, toId: goal.id, points: [begin.point, goal.point],
    pumperIds: free.slice(0, 1).map(({ id }) => id),
    stretches: [{ id: newId(), size_in: mostHose_in(district) }],
  }
}

/** Size of which there is most: as equipment, else on the pumpers. */
function mostHose_in({ equipment, apparatus }: District): number {
  const length_ft = new Map<number, number>()
  const add = (size_in: number, more_ft: number) => { length_ft.set(size_in, (length_ft.get(size_in) ?? 0) + more_ft) }
  for (const item of equipment) if (item.kind === 'hose') add(item.size_in, item.length_ft)
  if (length_ft.size === 0) for (const unit of apparatus) if (unit.kind === 'pumper' && unit.supplyHose_in !== undefined) add(unit.supplyHose_in, unit.supplyHose_ft ?? 0)
  return [...length_ft].sort((a, b) => b[1] - a[1])[0]?.[0] ?? defaults.fillLineSize_in.value
}
