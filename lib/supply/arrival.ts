import { issue, type Issue } from '../issue'
import { findStation, type Apparatus, type Bundle } from '../plan'
import { defaults } from './defaults'
import { take, takeDefault, type Ledger } from './ledger'
import { isWay, type Ways } from './ways'

/**
 * When a vehicle first stands at a place: turnout, then the way from its station.
 *
 * @returns seconds from dispatch, or the issue why it cannot get there; a vehicle with no station
 *          is taken to arrive at a stated time and a warning says so
 */
export function arrival(bundle: Bundle, ledger: Ledger, ways: Ways, unit: Apparatus, toId: string): { arrive_s: number; issues: Issue[] } | Issue {
  const station = findStation(bundle, unit.stationId)
  if (!station) {
    const arrive_s = takeDefault(ledger, unit.id, 'arrival_s', defaults.arrival_s)
    return { arrive_s, issues: [issue('unit-without-station', 'warn', [unit.id], { arrive_s })] }
  }
  const way = ways.find(unit.id, station.id, toId)
  if (way === undefined) return issue('place-missing', 'block', [toId])
  if (!isWay(way)) return way
  return { arrive_s: turnout_s(ledger, unit, station) + way.travel_s, issues: [] }
}

function turnout_s(ledger: Ledger, unit: Apparatus, station: { id: string; turnout_s?: number; evidence?: Apparatus['evidence'] }): number {
  return unit.turnout_s !== undefined
    ? take(ledger, unit, 'turnout_s', unit.turnout_s, defaults.turnout_s)
    : take(ledger, station, 'turnout_s', station.turnout_s, defaults.turnout_s)
}
