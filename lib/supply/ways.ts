import { issue, isBlocking, type Issue } from '../issue'
import type { Bundle } from '../plan'
import { defaults } from './defaults'
import { legUses, wayOf, type LegUse, type Way } from './legs'
import type { LegResult } from './result'

/** All ways of a plan, found or not. */
export type Ways = {
  readonly rows: readonly { readonly use: LegUse; readonly way: Way | Issue }[]
  find(apparatusId: string, fromId: string | undefined, toId: string | undefined): Way | Issue | undefined
}

export const isWay = (way: Way | Issue | undefined): way is Way => way !== undefined && 'travel_s' in way

/** Works out every way once; a way is found by who drives it from where to where. */
export function waysOf(bundle: Bundle): Ways {
  const rows = legUses(bundle).map((use) => ({ use, way: wayOf(bundle, use) }))
  const byTrip = new Map(rows.map(({ use, way }) => [trip(use.apparatusId, use.fromId, use.toId), way]))
  return { rows, find: (apparatusId, fromId, toId) => (fromId && toId ? byTrip.get(trip(apparatusId, fromId, toId)) : undefined) }
}

const trip = (apparatusId: string, fromId: string, toId: string) => `${apparatusId}>${fromId}>${toId}`

export function legResults(ways: Ways): LegResult[] {
  return ways.rows.map(({ use: { fromId, toId, apparatusId, load, key }, way }) => ({
    fromId, toId, apparatusId, load, key,
    by: isWay(way) ? way.by : null,
    distance_mi: isWay(way) ? way.distance_mi : null,
    travel_s: isWay(way) ? way.travel_s : null,
    isStraight: isWay(way) && way.isStraight,
  }))
}

/** What the ways themselves have to say: no way, straight lines, cautions of the roads, each once. */
export function wayIssues({ district }: Bundle, ways: Ways): Issue[] {
  const issues: Issue[] = []
  const straight = new Set<string>()
  const said = new Map<string, Issue>()
  for (const { use, way } of ways.rows) {
    if (!isWay(way)) {
      issues.push({ ...way, severity: isBlocking([way]) ? 'warn' : way.severity })
      continue
    }
    if (way.isStraight && way.by === 'handbook') straight.add(`${use.fromId}>${use.toId}`)
    for (const { code, severity, values } of way.cautions) {
      const key = `${code} ${JSON.stringify(values)}`
      const known = said.get(key)
      if (!known) said.set(key, issue(code, severity, [use.apparatusId], values))
      else if (!known.subjectIds.includes(use.apparatusId)) known.subjectIds.push(use.apparatusId)
    }
  }
  if (straight.size > 0)
    issues.push(issue(district.roads ? 'leg-unresolved' : 'leg-straight', 'warn', [], { count: straight.size, factor: district.roadFactor ?? defaults.roadFactor.value }))
  return [...issues, ...said.values()]
}
