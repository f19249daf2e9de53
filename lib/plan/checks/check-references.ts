import { issue, type Issue } from '../../issue'
import type { Bundle } from '../documents/bundle'
import { FIRE_GROUND } from '../documents/fire-ground'

/** Every id a plan or a district names must resolve; what does not is said with its place. */
export function checkReferences({ district, plan }: Pick<Bundle, 'district' | 'plan'>): Issue[] {
  const ids = {
    station: new Set(district.stations.map(({ id }) => id as string)),
    source: new Set(district.sources.map(({ id }) => id as string)),
    draftSite: new Set(district.draftSites.map(({ id }) => id as string)),
    hazard: new Set(district.hazards.map(({ id }) => id as string)),
    apparatus: new Set(district.apparatus.map(({ id }) => id as string)),
    equipment: new Set(district.equipment.map(({ id }) => id as string)),
    fillSite: new Set(plan.fillSites.map(({ id }) => id as string)),
    dumpSite: new Set(plan.dumpSites.map(({ id }) => id as string)),
  }
  const issues: Issue[] = []
  const must = (kind: keyof typeof ids, id: string | undefined, subjectId: string, ...others: (keyof typeof ids)[]) => {
    if (id !== undefined && ![kind, ...others].some((one) => ids[one].has(id))) issues.push(issue('id-unresolved', 'block', [subjectId], { kind, id }))
  }
  if (plan.districtId !== district.id) issues.push(issue('plan-of-other-district', 'block', [plan.id], { id: plan.districtId }))
  must('hazard', plan.hazardId, plan.id)
  must('apparatus', plan.firstDueId, plan.id)
  for (const site of plan.fillSites) {
    must('source', site.sourceId, site.id)
    must('draftSite', site.draftSiteId, site.id)
    must('apparatus', site.pumperId, site.id)
  }
  for (const site of plan.dumpSites) {
    must('apparatus', site.pumperId, site.id)
    must('apparatus', site.nurseId, site.id)
    for (const id of site.portableTankIds ?? []) must('equipment', id, site.id)
  }
  for (const task of plan.tenders) {
    must('apparatus', task.tenderId, task.tenderId)
    must('fillSite', task.fillSiteId, task.tenderId)
    must('dumpSite', task.dumpSiteId, task.tenderId)
  }
  for (const stretch of plan.oneLanes ?? []) {
    must('fillSite', stretch.fillSiteId, stretch.id)
    must('dumpSite', stretch.dumpSiteId, stretch.id)
  }
  for (const lay of plan.hoseLays ?? []) {
    must('draftSite', lay.fromId, lay.id, 'source')
    if (lay.toId !== FIRE_GROUND) must('fillSite', lay.toId, lay.id, 'dumpSite')
    for (const id of lay.pumperIds) must('apparatus', id, lay.id)
  }
  for (const site of district.draftSites) must('source', site.sourceId, site.id)
  for (const unit of district.apparatus) must('station', unit.stationId, unit.id)
  for (const item of district.equipment) must('apparatus', item.carriedBy, item.id)
  return issues
}
