import type { Point } from '@/lib/geo'
import type { Apparatus, District, DraftSite, Equipment, Hazard, Plan, RoadNote, Source, Station } from '@/lib/plan'
import type { RoadGraph } from '@/lib/roads'
import { uniform } from '@/lib/random'

/** How many there are of each: a county's worth of places, for measurements only. */
export const LARGE = { stations: 6, ponds: 40, hydrants: 30, draftSites: 60, hazards: 60, roadNotes: 6, pumpers: 14, tenders: 22, portablePumps: 4, plans: 30 } as const

export type LargeDistrict = { readonly district: District; readonly plans: readonly Plan[] }

const ID = 'bench-large'
const heads = ['Alder', 'Birch', 'Cooper', 'Dunlin', 'Elder', 'Fallow', 'Gorse', 'Hazel', 'Ivy', 'Juniper', 'Kestrel', 'Larch', 'Millet', 'Nettle', 'Osier', 'Plover', 'Quarry', 'Rowan', 'Sorrel', 'Teasel']
const tails = ['Bottom', 'Bridge', 'Corner', 'Crossing', 'End', 'Fork', 'Gap', 'Hill', 'Hollow', 'Knoll', 'Lane', 'Meadow', 'Notch', 'Reach', 'Ridge', 'Run']

/** Draws one after the other of one seed: the same district at every call. */
class Draws {
  readonly #seed: number
  #count = 0
  constructor(seed: number) { this.#seed = seed }
  next(): number { return uniform(this.#seed, 0, 0, this.#count++) }
  between(low: number, high: number): number { return low + this.next() * (high - low) }
  whole(low: number, high: number): number { return Math.floor(this.between(low, high + 1)) }
  of<T>(list: readonly T[]): T {
    const found = list[Math.floor(this.next() * list.length)]
    if (found === undefined) throw new RangeError('list is empty, must hold something to draw')
    return found
  }
}

/**
 * An invented district of some 200 places along the roads of a graph, with 40 apparatus, what they carry and 30 plans.
 *
 * @param graph whose largest connected part the places lie at
 * @param sets  roads, map and terrain of the district
 */
export function largeDistrict(graph: RoadGraph, sets: Pick<District, 'roads' | 'map' | 'terrain' | 'bounds'>, seed = 1): LargeDistrict {
  const draws = new Draws(seed)
  const nodes = reachableNodes(graph)
  const beside = (far_deg = 0.0004): Point => {
    const node = draws.of(nodes)
    return { lat: node.lat + draws.between(-far_deg, far_deg), lon: node.lon + draws.between(-far_deg, far_deg) }
  }
  const list = <T>(count: number, make: (index: number, name: string) => T): T[] =>
    Array.from({ length: count }, (_, index) => make(index, `${heads[index % heads.length] ?? ''} ${tails[(index * 7 + Math.floor(index / heads.length)) % tails.length] ?? ''}`))

  const stations = list(LARGE.stations, (index, name): Station => ({ id: `s${index}`, name: `Station ${index + 1}, ${name}`, point: beside(), turnout_s: draws.whole(120, 360) }))
  const ponds = list(LARGE.ponds, (index, name): Source => ({
    id: `w${index}`, kind: draws.of(['pond', 'lake', 'stream', 'cistern', 'dryHydrant']), name: `${name} pond`, point: beside(0.001), usable_gal: draws.whole(20, 900) * 1000, inflow_gpm: draws.whole(0, 900),
    seasonalDrop_ft: draws.between(0, 3), notes: `Gate at the road, ${draws.whole(8, 14)} ft wide.`, evidence: { usable_gal: { mark: 'measured', on: '2025-06-01', spreadShare: 0.2 } },
  }))
  const hydrants = list(LARGE.hydrants, (index, name): Source => ({
    id: `h${index}`, kind: 'pressureHydrant', name: `${name} hydrant`, point: beside(), ...(index % 3 > 0 && { static_psi: draws.whole(45, 80), residual_psi: draws.whole(20, 40), test_gpm: draws.whole(400, 1100) }),
  }))
  const draftSites = list(LARGE.draftSites, (index, name): DraftSite => {
    const source = ponds[index % ponds.length]
    if (!source) throw new RangeError('there are no ponds, must be some to draft from')
    return { id: `d${index}`, name: `${name} bank`, sourceId: source.id, point: { lat: source.point.lat + draws.between(-2e-4, 2e-4), lon: source.point.lon }, hoseRun_ft: draws.whole(10, 30), ...(index % 5 > 0 && { lift_ft: draws.between(3, 16) }) }
  })
  const hazards = list(LARGE.hazards, (index, name): Hazard => ({
    id: `z${index}`, name: `${name} farm`, point: beside(), length_ft: draws.whole(30, 160), width_ft: draws.whole(24, 80), storeyHeight_ft: 10, storeyCount: draws.whole(1, 3), occupancyClass: draws.whole(3, 7),
    constructionType: draws.of(['II', 'III', 'V']), exposureCount: draws.whole(0, 3), needed_gpm: draws.whole(5, 15) * 50, neededBy: 'officer',
  }))
  const roadNotes = list(LARGE.roadNotes, (index, name): RoadNote => ({ id: `n${index}`, name: `${name} posting`, point: beside(0), maxWeight_lb: 80_000 }))
  const apparatus: Apparatus[] = [
    ...list(LARGE.pumpers, (index): Apparatus => ({ kind: 'pumper', id: `p${index}`, name: `Engine ${index + 1}`, stationId: `s${index % LARGE.stations}`, rated_gpm: draws.of([1000, 1250, 1500]), tank_gal: draws.of([500, 750, 1000]), full_lb: draws.whole(34, 44) * 1000 })),
    ...list(LARGE.tenders, (index): Apparatus => ({
      kind: 'tender', id: `t${index}`, name: `Tender ${index + 1}`, stationId: `s${index % LARGE.stations}`, tank_gal: draws.whole(4, 14) * 250, full_lb: draws.whole(32, 58) * 1000, empty_lb: draws.whole(20, 28) * 1000,
      ...(index % 2 === 0 && { dump_gpm: draws.whole(8, 16) * 100 }), evidence: { tank_gal: { mark: 'handbook', source: 'plate' } },
    })),
    ...list(LARGE.portablePumps, (index): Apparatus => ({ kind: 'portablePump', id: `q${index}`, name: `Portable pump ${index + 1}`, stationId: `s${index}`, rated_gpm: draws.of([250, 500]) })),
  ]
  const equipment = [...apparatus.filter(({ kind }) => kind !== 'portablePump').flatMap((unit): Equipment[] => unit.kind === 'tender'
    ? [{ kind: 'portableTank', id: `k${unit.id}`, name: `Portable tank of ${unit.name}`, carriedBy: unit.id, capacity_gal: draws.of([2100, 2500, 3000]) }]
    : [{ kind: 'hose', id: `l${unit.id}`, name: `5 in hose of ${unit.name}`, carriedBy: unit.id, size_in: 5, length_ft: 1000 }, { kind: 'hardSuction', id: `m${unit.id}`, name: `Hard suction of ${unit.name}`, carriedBy: unit.id, size_in: 6, section_ft: 10, count: 2 }])]

  const plans = list(LARGE.plans, (index, name): Plan => {
    const site = draftSites[index * 2]
    const hazard = hazards[(index * 2 + 1) % hazards.length]
    if (!site || !hazard) throw new RangeError('there are too few places, must be enough for each plan')
    return {
      format: 'millrace-plan-document', version: 1, id: `plan-bench-${index}`, name: `${name} farm from ${site.name}`, districtId: ID, hazardId: hazard.id, fireGround: hazard.point, firstDueId: `p${index % LARGE.pumpers}`,
      fillSites: [{ id: `f${index}`, name: `Fill at ${site.name}`, point: site.point, ...(site.sourceId !== undefined && { sourceId: site.sourceId }), draftSiteId: site.id, pumperId: `p${(index + 1) % LARGE.pumpers}`, suction: { size_in: 6, length_ft: 20, lineCount: 1 }, fillLine: { size_in: 5, length_ft: 50 }, bayCount: 2, ...(site.lift_ft === undefined && { lift_ft: 9 }) }],
      dumpSites: [{ id: `u${index}`, name: `Dump at ${hazard.name}`, point: hazard.point, portableTankIds: [`kt${index % LARGE.tenders}`], pumperId: `p${(index + 2) % LARGE.pumpers}`, positionCount: 2 }],
      tenders: Array.from({ length: 8 }, (_, turn) => ({ id: `g${index}-${turn}`, tenderId: `t${(index + turn) % LARGE.tenders}` })),
      demand: [{ id: `x${index}`, from_s: 0, flow_gpm: 400 }], legNotes: [],
    }
  })
  return {
    district: { format: 'millrace-district', version: 1, id: ID, name: 'Wide Valley (invented)', units: 'us', altitude_ft: 700, ...sets, stations, sources: [...ponds, ...hydrants], draftSites, hazards, roadNotes, apparatus, equipment },
    plans,
  }
}

/** Nodes of the largest part of the roads: everything there can be driven to. */
function reachableNodes({ component, componentSize, nodeLatE7, nodeLonE7 }: RoadGraph): Point[] {
  const largest = componentSize.indexOf(Math.max(...componentSize))
  return Array.from(nodeLatE7, (lat, node) => ({ lat: lat / 1e7, lon: (nodeLonE7[node] ?? 0) / 1e7, part: component[node] })).filter(({ part }) => part === largest).map(({ lat, lon }) => ({ lat, lon }))
}
