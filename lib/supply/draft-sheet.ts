import type { Evidence } from '../evidence'
import { calibrateRequiredHead, draftCapacity, type DraftCapacity, type DraftPlace, type PumperHydraulics, type RequiredHead, type SuctionSetup } from '../hydraulics'
import type { Issue } from '../issue'
import type { District, DraftingPump, DraftSite, Season, Source, Suction } from '../plan'
import { draftPlace, liftIssues, liftOf, pumperHydraulics, suctionSetup, type ResolvedLift } from './drafting'
import { startLedger, type Ledger } from './ledger'
import { seasonDrop, type SeasonDrop } from './season'
import { suctionNotCarried } from './stock'
import { sourceWater, type SourceWater } from './source'

/** What is tried on a draft site's sheet; what is absent is the district's, the site's or the pumper's own. */
export type SheetTrial = {
  readonly season?: Season
  readonly lift_ft?: number
  /** How that lift is known; absent: only tried. */
  readonly liftEvidence?: Evidence
  readonly altitude_ft?: number
  readonly barometer_inHg?: number
  readonly water_degF?: number
  /** Default 150, the pressure of the rating. */
  readonly netPressure_psi?: number
  readonly suction?: Suction
}

/** A draft site with one pumper at it, worked out. */
export type DraftSheet = {
  readonly ledger: Ledger
  readonly district: District
  readonly draftSite: DraftSite
  readonly source?: Source
  readonly pump: DraftingPump
  readonly pumper: PumperHydraulics
  readonly suction: SuctionSetup
  readonly place: DraftPlace
  readonly lift: ResolvedLift
  readonly drop: SeasonDrop
  readonly water: SourceWater
  readonly netPressure_psi: number
  readonly required: RequiredHead
  readonly capacity: DraftCapacity
  readonly issues: readonly Issue[]
}

const RATING_PSI = 150
/** The law of drafting is good from here to here; a lift outside is drawn at the edge and said. */
const LOWEST_LIFT_FT = -20
const HIGHEST_LIFT_FT = 60

/**
 * What a pumper can draw at a draft site: the same laws, defaults and seasons that a plan is answered by.
 *
 * @param trial conditions and set-up tried in place of the known ones
 * @returns undefined for a pump without a rated capacity
 */
export function findDraftSheet(district: District, draftSite: DraftSite, pump: DraftingPump, trial: SheetTrial = {}): DraftSheet | undefined {
  if (!pump.rated_gpm) return undefined
  const ledger = startLedger()
  const source = district.sources.find(({ id }) => id === draftSite.sourceId)
  const drop = seasonDrop(source, trial.season)
  const water = sourceWater(source, drop)
  const tried = trial.lift_ft === undefined ? {} : { lift_ft: trial.lift_ft, ...(trial.liftEvidence && { evidence: { lift_ft: trial.liftEvidence } }) }
  const lift = liftOf(ledger, { id: draftSite.id, ...tried }, draftSite, source, drop)
  const lift_ft = Math.min(HIGHEST_LIFT_FT, Math.max(LOWEST_LIFT_FT, lift.lift_ft))
  const here = draftPlace(ledger, district, lift_ft, source?.water_degF)
  const place: DraftPlace = {
    ...here,
    ...(trial.altitude_ft !== undefined && { altitude_ft: trial.altitude_ft }),
    ...(trial.barometer_inHg !== undefined && { barometer_inHg: trial.barometer_inHg }),
    ...(trial.water_degF !== undefined && { water_degF: trial.water_degF }),
  }
  const pumper = pumperHydraulics(pump)
  const suction = suctionSetup(ledger, { ...(trial.suction && { suction: trial.suction }) }, draftSite, pump)
  const bare = suctionNotCarried({ district }, pump, suction, source, draftSite.id)
  const netPressure_psi = trial.netPressure_psi ?? RATING_PSI
  const capacity = draftCapacity({ pumper, suction, place, ask: { netPressure_psi } })
  return {
    ledger, district, draftSite, ...(source && { source }), pump, pumper, suction, place, lift, drop, water, netPressure_psi, capacity,
    required: calibrateRequiredHead(pumper),
    issues: [
      ...(bare ? [bare] : []),
      ...liftIssues(lift, draftSite.id),
      ...drop.issues, ...water.issues,
      ...capacity.issues.map((one) => ({ ...one, subjectIds: [draftSite.id, pump.id] })),
    ],
  }
}

/** The sheet's pumper at its place through another set-up, or at another lift. */
export function draftWith({ pumper, suction, place, netPressure_psi }: DraftSheet, other: { readonly suction?: SuctionSetup; readonly lift_ft?: number } = {}): DraftCapacity {
  return draftCapacity({
    pumper, suction: other.suction ?? suction, ask: { netPressure_psi },
    place: other.lift_ft === undefined ? place : { ...place, lift_ft: other.lift_ft },
  })
}
