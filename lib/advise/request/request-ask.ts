import type { Bundle, Tender, TenderTask } from '../../plan'
import { freshId } from '../candidates/fresh-id'

/** What is asked: so much water at the fire ground, from a stated time on. */
export type RequestAsk = { readonly flow_gpm: number; /** after dispatch */ readonly by_s: number }

/** Tenders that may be asked for, each with the part it would have: the plan's own as planned, others where fewest go. */
export function requestTasks(bundle: Bundle): { tender: Tender; task: TenderTask; isPlanned: boolean }[] {
  const { plan, district } = bundle
  const planned = new Map(plan.tenders.map((task) => [task.tenderId as string, task]))
  const countAt = new Map(plan.fillSites.map(({ id }) => [id as string, 0]))
  const join = (siteId: string | undefined) => { if (siteId) countAt.set(siteId, (countAt.get(siteId) ?? 0) + 1) }
  for (const task of plan.tenders) join(task.fillSiteId ?? plan.fillSites[0]?.id)
  const nurses = new Set<string | undefined>(plan.dumpSites.map(({ nurseId }) => nurseId as string | undefined))
  const tenders = district.apparatus.flatMap((unit) => (unit.kind === 'tender' && unit.tank_gal && !nurses.has(unit.id) ? [unit] : []))
  return tenders.map((tender) => {
    const own = planned.get(tender.id)
    if (own) return { tender, task: own, isPlanned: true }
    const perBay = ({ id, bayCount = 1 }: { id: string; bayCount?: number }) => (countAt.get(id) ?? 0) / bayCount
    const fill = plan.fillSites.toSorted((a, b) => perBay(a) - perBay(b))[0]
    join(fill?.id)
    const task: TenderTask = { id: freshId(bundle, `task-${tender.id}`), tenderId: tender.id, ...(plan.fillSites.length > 1 && fill && { fillSiteId: fill.id }) }
    return { tender, task, isPlanned: false }
  })
}
