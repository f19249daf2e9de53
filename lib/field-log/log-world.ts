import type { District, FieldLog } from '../plan'
import { dumpAlone_s } from '../shuttle/round-of'
import { compilePlan, defaults } from '../supply'

/**
 * How long a trip should take, and by how much it may be more or less; and by how much more the one direction may take than
 * expected without the other taking it too.
 */
export type ExpectedTrip = { travel_s: number; doubt_s: number; lopsided_s: number }

/** What is known before the first event: where and with what the log was kept, and what was planned of it. */
export type LogWorld = {
  units: readonly { id: string; name: string; isTender: boolean }[]
  sites: readonly { id: string; name: string; kind: 'fill' | 'dump' }[]
  /** Water that a tender carries and gives each trip [gal], where known. */
  load_gal: (apparatusId: string) => number | undefined
  /** Water that the portable tanks of a dump site hold to their lip [gal], where known. */
  capacity_gal: (siteId: string) => number | undefined
  /** How long a tender's load runs out [s], where known. */
  dump_s: (apparatusId: string) => number | undefined
  findTrip: (apparatusId: string, fromSiteId: string, toSiteId: string) => ExpectedTrip | undefined
  /** Flow asked for, from each time after dispatch on [gpm]. */
  demand: readonly { from_s: number; flow_gpm: number }[]
}

/** A trip may differ from what was planned by so much of it, either way. Common practice, no source. */
export const TRIP_DOUBT_SHARE = 0.3
/** And by so much however short it is: backing, a gate, a word with the crew. Common practice, no source. */
export const TRIP_DOUBT_S = 30
/** Loaded and empty, uphill and down: so much of a planned trip may the one direction take more and the other not. Common practice, no source. */
const LOPSIDED_SHARE = 0.1

/**
 * @param log      with its plan as planned, or without
 * @param district the live district, for a log without a plan
 */
export function logWorld(log: Pick<FieldLog, 'planned' | 'places' | 'units'>, district?: District): LogWorld {
  const { planned } = log
  const compiled = planned && compilePlan(planned)
  const apparatus = (planned?.district ?? district)?.apparatus ?? []
  const tenders = new Map((compiled?.spec?.tenders ?? []).map((tender) => [tender.id, tender]))
  const dumps = new Map((compiled?.spec?.dumps ?? []).map((dump) => [dump.id, dump]))
  const fills = compiled?.spec?.fills ?? []
  const tanks = new Map<string, number>(log.units.flatMap(({ id, tank_gal }) => (tank_gal === undefined ? [] : [[id, tank_gal * defaults.usableShare.value] as const])))
  for (const unit of apparatus) if (unit.kind === 'tender' && unit.tank_gal !== undefined) tanks.set(unit.id, unit.tank_gal * (unit.usableShare ?? defaults.usableShare.value))
  const wayBack = (id: string, fillSiteId: string, dumpSiteId: string) => {
    const tender = tenders.get(id)
    if (!tender) return undefined
    const all = tender.ways ?? [tender]
    return all.find((way) => fills[way.fillIndex]?.id === fillSiteId && [...dumps.values()][way.dumpIndex]?.id === dumpSiteId)
  }
  return {
    units: [
      ...apparatus.map(({ id, name, kind }) => ({ id, name, isTender: kind === 'tender' })),
      ...log.units.map(({ id, name }) => ({ id, name, isTender: true })),
    ],
    sites: [
      ...(planned?.plan.fillSites ?? []).map(({ id, name }) => ({ id, name, kind: 'fill' as const })),
      ...(planned?.plan.dumpSites ?? []).map(({ id, name }) => ({ id, name, kind: 'dump' as const })),
      ...log.places.map(({ id, name, kind }) => ({ id, name, kind })),
    ],
    load_gal: (id) => tenders.get(id)?.usable_gal ?? tanks.get(id),
    capacity_gal: (id) => {
      const dump = dumps.get(id)
      return dump ? dump.capacity_gal + (dump.front?.capacity_gal ?? 0) : log.places.find((place) => place.id === id)?.tank_gal
    },
    dump_s: (id) => {
      const tender = tenders.get(id)
      return tender && tender.dumpRate_gpm.length > 0 ? dumpAlone_s(tender) : undefined
    },
    findTrip: (id, from, to) => {
      const travel_s = wayBack(id, from, to)?.toDump_s ?? wayBack(id, to, from)?.toFill_s
      return travel_s === undefined ? undefined : { travel_s, doubt_s: TRIP_DOUBT_SHARE * travel_s + TRIP_DOUBT_S, lopsided_s: LOPSIDED_SHARE * travel_s }
    },
    demand: compiled?.spec?.demand.stages ?? [],
  }
}
