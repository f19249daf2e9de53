import { issue, isBlocking, type Issue } from '../issue'
import type { Bundle } from '../plan'
import { defaults } from './defaults'
import { noted, type Ledger } from './ledger'
import { findLegNote, legUses, wayOf, type LegUse, type Way } from './legs'
import type { LegResult } from './result'
import { RoadCautions } from './road-cautions'

/** All ways of a plan, found or not. */
export type Ways = {
  readonly rows: readonly { readonly use: LegUse; readonly way: Way | Issue }[]
  find(apparatusId: string, fromId: string | undefined, toId: string | undefined): Way | Issue | undefined
}

export const isWay = (way: Way | Issue | undefined): way is Way => way !== undefined && 'travel_s' in way

/**
 * Works out every way once; a way is found by who drives it from where to where.
 *
 * @param ledger notes how well each road's travel time is known: one doubt a road, for all who drive it either way
 */
export function waysOf(bundle: Bundle, ledger?: Ledger): Ways {
  const rows = legUses(bundle).map((use) => {
    const way = wayOf(bundle, use)
    return { use, way: ledger && isWay(way) ? { ...way, travel_s: doubtedTravel_s(bundle, ledger, use, way) } : way }
  })
  const byTrip = new Map(rows.map(({ use, way }) => [trip(use.apparatusId, use.fromId, use.toId), way]))
  return { rows, find: (apparatusId, fromId, toId) => (fromId && toId ? byTrip.get(trip(apparatusId, fromId, toId)) : undefined) }
}

/** Half the range of a travel time, as a share of it, by how it was found. Common practice, no source. */
const travelSpread = { measured: 0.05, routed: 0.15, handbook: 0.2, straight: 0.3 } as const
const markBySource = { measured: 'measured', routed: 'computed', handbook: 'handbook' } as const

/** Key of the road between two places, either way. */
const roadKey = (a: string, b: string): string => `road ${[a, b].sort().join('~')}/travel_s`

function doubtedTravel_s(bundle: Bundle, ledger: Ledger, use: LegUse, way: Way): number {
  const { fromId, toId } = use
  const evidence = findLegNote(bundle, fromId, toId, use.apparatusId)?.evidence?.travel_s
  const spreadShare = way.by === 'measured' && evidence?.spreadShare !== undefined ? evidence.spreadShare : travelSpread[way.isStraight && way.by !== 'measured' ? 'straight' : way.by]
  const mark = way.by === 'measured' ? (evidence?.mark ?? 'measured') : way.isStraight ? 'assumed' : markBySource[way.by]
  return noted(ledger, roadKey(fromId, toId), { itemId: fromId, otherId: toId, field: 'travel_s', value: way.travel_s, mark, isDefault: way.by === 'handbook', spreadShare })
}

const trip = (apparatusId: string, fromId: string, toId: string) => `${apparatusId}>${fromId}>${toId}`

/** The ways of a plan as a result tells them; figures of those not found are null. */
export function legResults(ways: Ways): LegResult[] {
  return ways.rows.map(({ use: { fromId, toId, apparatusId, load, key }, way }) => ({
    fromId, toId, apparatusId, load, key,
    by: isWay(way) ? way.by : null,
    distance_mi: isWay(way) ? way.distance_mi : null,
    travel_s: isWay(way) ? way.travel_s : null,
    isStraight: isWay(way) && way.isStraight,
  }))
}

/** What the ways themselves have to say: no way, straight lines, cautions of the roads, each once with all whose ways it concerns. */
export function wayIssues({ district }: Bundle, ways: Ways): Issue[] {
  const issues: Issue[] = []
  const straight = new Set<string>()
  const cautions = new RoadCautions()
  for (const { use, way } of ways.rows) {
    if (!isWay(way)) {
      issues.push({ ...way, severity: isBlocking([way]) ? 'warn' : way.severity })
      continue
    }
    if (way.isStraight && way.by === 'handbook') straight.add(`${use.fromId}>${use.toId}`)
    for (const caution of way.cautions) cautions.add(caution, use.apparatusId)
  }
  if (straight.size > 0)
    issues.push(issue(district.roads ? 'leg-unresolved' : 'leg-straight', 'warn', [], { count: straight.size, factor: district.roadFactor ?? defaults.roadFactor.value }))
  return [...issues, ...cautions.list()]
}
