import type { Bundle, EditBody, Tender } from '../../plan'
import type { Candidate } from '../candidate'
import { assumedEffort, crewOf } from '../effort'
import { freshId } from './fresh-id'

/** Every tender of the district that the plan does not use, from its own stations or by mutual aid. */
function unusedTenders({ district, plan }: Bundle): Tender[] {
  const used = new Set<string | undefined>([...plan.tenders.map(({ tenderId }) => tenderId as string), ...plan.dumpSites.map(({ nurseId }) => nurseId as string | undefined)])
  return district.apparatus.flatMap((unit) => (unit.kind === 'tender' && unit.tank_gal && !used.has(unit.id) ? [unit] : []))
}

/** One more tender, at each fill and dump site there is, alone and with the portable tank that it carries. */
export function moreTenders(bundle: Bundle): Candidate[] {
  const { plan, district } = bundle
  const standing = new Set(plan.dumpSites.flatMap(({ portableTankIds }) => (portableTankIds ?? []) as string[]))
  return unusedTenders(bundle).flatMap((tender) => {
    const station = district.stations.find(({ id }) => id === tender.stationId)
    const tank = district.equipment.find((item) => item.kind === 'portableTank' && item.carriedBy === tender.id && !standing.has(item.id))
    return plan.fillSites.flatMap((fill) => plan.dumpSites.flatMap((dump): Candidate[] => {
      const task: EditBody = {
        kind: 'addItem', collection: 'tenders',
        item: {
          id: freshId(bundle, `task-${tender.id}`), tenderId: tender.id,
          ...(plan.fillSites.length > 1 && { fillSiteId: fill.id }),
          ...(plan.dumpSites.length > 1 && { dumpSiteId: dump.id }),
        },
      }
      const alone: Candidate = {
        id: `tender:${tender.id}:${fill.id}:${dump.id}`, group: `tender:${tender.id}`, kind: 'tender',
        subjectIds: [tender.id, ...(station ? [station.id] : []), fill.id, dump.id],
        values: { tank_gal: tender.tank_gal ?? 0 },
        edits: [task],
        effort: { ...assumedEffort.tender, peopleCount: crewOf(tender), apparatusCount: 1 },
        comes: { apparatusId: tender.id, toId: dump.id },
        provisos: tender.mutualAid || station?.mutualAid ? ['mutual-aid'] : [],
      }
      if (tank?.kind !== 'portableTank' || !dump.portableTankIds?.length || dump.nurseId) return [alone]
      return [alone, {
        ...alone,
        id: `${alone.id}:${tank.id}`, kind: 'tenderWithTank',
        values: { ...alone.values, capacity_gal: tank.capacity_gal },
        edits: [task, { kind: 'setFields', collection: 'dumpSites', id: dump.id, set: { portableTankIds: [...dump.portableTankIds, tank.id] } }],
        effort: { ...alone.effort, peopleCount: alone.effort.peopleCount + assumedEffort.tenderWithTank.peopleCount },
        provisos: [...alone.provisos, 'tank-carrier', ...siphonProviso(bundle, [tender.id])],
      }]
    }))
  })
}

/** Tanks joined by their drains stand at one level; else a jet siphon must be among what comes. */
export function siphonProviso({ district, plan }: Bundle, alsoIds: readonly string[] = []): Candidate['provisos'] {
  const present = new Set<string | undefined>([
    ...plan.tenders.map(({ tenderId }) => tenderId as string), ...[...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined),
    plan.firstDueId, ...alsoIds,
  ])
  present.delete(undefined)
  return district.equipment.some((item) => item.kind === 'jetSiphon' && (item.carriedBy === undefined || present.has(item.carriedBy))) ? [] : ['siphon-not-listed']
}
