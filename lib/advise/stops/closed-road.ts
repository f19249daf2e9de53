import { pointAlong } from '../../geo'
import type { Bundle } from '../../plan'
import type { ShuttleSpec, TenderSpec } from '../../shuttle'
import { legUses, wayOf, type Way } from '../../supply'
import type { Issue } from '../../issue'
import { lacksWays, shuttleLegs, withClosure, type ResolveWays } from '../ways-with-closure'
import type { Stop } from './stop'
import { tendersKeeping, waysOfTender, withWays } from './tender-ways'

/** Parts of the way at which it is closed; the worst of them counts. */
const CLOSED_AT_SHARES = [0.25, 0.5, 0.75] as const

/**
 * Each road of the shuttle closed to everyone: tenders go round where their weight and height allow, and
 * stay out where there is no way. With no road data there is no way round.
 *
 * Only the shuttle's own ways are found anew: whoever is at the fire has already arrived.
 */
export function closedRoads(bundle: Bundle, spec: ShuttleSpec, pump_gpm: number, resolve: ResolveWays): Stop[] {
  if (!bundle.district.roads) return withoutRoadData(spec, pump_gpm)
  return shuttleLegs(bundle).flatMap(({ use, leg }): Stop[] => {
    const closed = CLOSED_AT_SHARES.map((share) => withClosure(bundle, pointAlong(leg.path, share), [use.fromId, use.toId], resolve))
    // Without the roads at hand nobody knows the way round.
    if (closed.some(lacksWays)) return []
    const left = closed
      .map((one) => tendersRound(spec, one))
      .sort((a, b) => loadsAnHour(a) - loadsAnHour(b))[0] ?? []
    const changed = { ...spec, tenders: left }
    return [{
      id: `road:${use.fromId}:${use.toId}:${use.load}`, kind: 'road', subjectIds: [use.fromId, use.toId],
      values: { roads: (leg.roads ?? []).slice(0, 3).join(', '), load: use.load, cut: spec.tenders.length - left.length },
      isAtOnce: false, pump_gpm, onward: changed, after: left.length > 0 ? changed : undefined,
    }]
  })
}

function withoutRoadData(spec: ShuttleSpec, pump_gpm: number): Stop[] {
  return spec.fills.flatMap((fill, fillIndex) => spec.dumps.flatMap((dump, dumpIndex): Stop[] => {
    if (!spec.tenders.some((tender) => waysOfTender(tender).some((way) => way.fillIndex === fillIndex && way.dumpIndex === dumpIndex))) return []
    const left = tendersKeeping(spec.tenders, (way) => way.fillIndex !== fillIndex || way.dumpIndex !== dumpIndex)
    const changed = { ...spec, tenders: left }
    return [{
      id: `road:${fill.id}:${dump.id}`, kind: 'road', subjectIds: [fill.id, dump.id], values: { roads: '', load: '', cut: spec.tenders.length - left.length },
      isAtOnce: false, pump_gpm, onward: changed, after: left.length > 0 ? changed : undefined,
    }]
  }))
}

/** The tenders with their ways round a closure; those that have none are left out. */
function tendersRound(spec: ShuttleSpec, closed: Bundle): TenderSpec[] {
  const uses = legUses(closed)
  const find = (apparatusId: string, fromId: string, toId: string): Way | Issue | undefined => {
    const use = uses.find((one) => one.apparatusId === apparatusId && one.fromId === fromId && one.toId === toId)
    return use && wayOf(closed, use)
  }
  return spec.tenders.flatMap((tender) => {
    const round = waysOfTender(tender).flatMap((way) => {
      const [fillId, dumpId] = [spec.fills[way.fillIndex]?.id ?? '', spec.dumps[way.dumpIndex]?.id ?? '']
      const toFill = find(tender.id, dumpId, fillId)
      const toDump = find(tender.id, fillId, dumpId)
      return toFill && toDump && 'travel_s' in toFill && 'travel_s' in toDump ? [{ ...way, toFill_s: toFill.travel_s, toDump_s: toDump.travel_s }] : []
    })
    return withWays(tender, round) ?? []
  })
}

/** How much the tenders drive in with nobody in the way: enough to tell which closure is worst. */
const loadsAnHour = (tenders: readonly TenderSpec[]): number =>
  tenders.reduce((sum, { usable_gal, toFill_s, toDump_s }) => sum + (usable_gal * 3600) / (600 + toFill_s + toDump_s), 0)
