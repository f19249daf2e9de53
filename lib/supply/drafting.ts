import type { Evidence } from '../evidence'
import { issue, type Issue } from '../issue'
import type { DraftPlace, PumperHydraulics, SuctionSetup } from '../hydraulics'
import { ratedSuction } from '../hydraulics'
import type { District, DraftingPump, DraftSite, FillSite, Source } from '../plan'
import { defaults } from './defaults'
import { take, takeKnown, type Ledger } from './ledger'
import { spreadByMark } from './spread'
import type { SeasonDrop } from './season'

/**
 * How a pump's ability compares with its rating or its own tests: a worn pump gives less everywhere.
 * It is a factor on what the pump moves and not another rating, which would come with other suction hose.
 *
 * @returns 1, unless the ledger asks for another value of the rating
 */
export function pumpAbility(ledger: Ledger, pump: DraftingPump): number {
  if (!pump.rated_gpm) return 1
  const isTested = (pump.testPoints?.length ?? 0) + (pump.curvePoints?.length ?? 0) > 0
  return takeKnown(ledger, pump, 'rated_gpm', pump.rated_gpm, isTested && pump.evidence?.rated_gpm?.spreadShare === undefined ? spreadByMark.measured : undefined) / pump.rated_gpm
}

/** What is known of a pump, as the drafting law wants it. */
export function pumperHydraulics(pump: DraftingPump): PumperHydraulics {
  const { rated_gpm = 0, ratedLift_ft, dryVacuum_inHg, dryVacuumAltitude_ft, isOverRated, pumpTop_ft, testPoints, curvePoints } = pump
  return {
    rated_gpm, ratedLift_ft, dryVacuum_inHg, dryVacuumAltitude_ft, pumpTop_ft,
    overRating: isOverRated,
    curvePoints: curvePoints?.map(({ netPressure_psi, flow_gpm }) => ({ netPressure_psi, flow_gpm })),
    testPoints: testPoints?.map((point) => ({
      lift_ft: point.lift_ft,
      flow_gpm: point.flow_gpm,
      altitude_ft: point.altitude_ft ?? defaults.altitude_ft.value,
      water_degF: point.water_degF ?? defaults.water_degF.value,
      suction: { size_in: point.suction_in, length_ft: point.suction_ft ?? 20, lineCount: point.suctionLineCount ?? 1 },
    })),
  }
}

/** Air, water and lift at a place where a pumper drafts. */
export function draftPlace(ledger: Ledger, district: District, lift_ft: number, water_degF: number | undefined): DraftPlace {
  return {
    lift_ft,
    altitude_ft: take(ledger, district, 'altitude_ft', district.altitude_ft, defaults.altitude_ft),
    barometer_inHg: district.barometer_inHg,
    water_degF: water_degF ?? take(ledger, district, 'water_degF', district.water_degF, defaults.water_degF),
  }
}

/**
 * Suction set-up of a fill site: the plan's own, else what the pumper carries, else what a pump of
 * its rating was rated with; through the site's dry hydrant where there is one.
 */
export function suctionSetup(ledger: Ledger, site: Pick<FillSite, 'suction'>, draftSite: DraftSite | undefined, pump: DraftingPump): SuctionSetup {
  const rated = ratedSuction(pump.rated_gpm ?? 1000).suction
  const carried = pump.kind === 'pumper' ? pump : undefined
  const size_in = site.suction?.size_in ?? take(ledger, pump, 'suction_in', carried?.suction_in, { ...defaults.suctionSize_in, value: rated.size_in })
  const length_ft = site.suction?.length_ft ?? draftSite?.hoseRun_ft ?? take(ledger, pump, 'suction_ft', carried?.suction_ft, defaults.suctionLength_ft)
  const intake = site.suction?.intake ?? 'side'
  return {
    size_in, length_ft, intake,
    lineCount: site.suction?.lineCount ?? 1,
    strainer: site.suction?.strainer ?? 'barrel',
    ...(intake !== 'side' && pump.intakeLoss_ft !== undefined && { intakeExtraAt1000gpm_ft: pump.intakeLoss_ft }),
    ...(draftSite?.dryHydrant && {
      dryHydrant: {
        pipe_in: draftSite.dryHydrant.pipe_in,
        length_ft: draftSite.dryHydrant.pipe_ft,
        elbow90Count: draftSite.dryHydrant.elbow90Count,
        elbow45Count: draftSite.dryHydrant.elbow45Count,
      },
    }),
  }
}

/** A lift, how far the season adds to it, and what stands behind it. */
export type ResolvedLift = {
  readonly lift_ft: number
  /** Part of it that the season adds. */
  readonly drop_ft: number
  readonly from: 'plan' | 'measured' | 'elevations' | 'assumed'
  readonly isGuess: boolean
  /** A lift by elevations that was not taken, since it may be off by more than itself. */
  readonly doubtful?: { readonly elevation_ft: number; readonly doubt_ft: number }
}

/**
 * Lift at a draft site: the plan's before the site's own before one worked out from elevations before an assumed one.
 *
 *   lift = bank + intake height − water surface, where it was not measured;  + fall of the surface in the season
 *   its doubt = √(bank² + surface²), where both say how far they may be off
 *
 * A lift by elevations that may be off by more than itself promises nothing: the assumed one stands in, as a guess.
 *
 * @param drop the season's fall of the source, from `seasonDrop`; it is added to whatever lift was found
 * @returns lift, and whether anything but a guess stands behind it
 */
export function liftOf(
  ledger: Ledger, site: Omit<Pick<FillSite, 'id' | 'lift_ft' | 'evidence'>, 'id'> & { readonly id: string }, draftSite: DraftSite | undefined, source: Pick<Source, 'surfaceElevation_ft' | 'evidence'> | undefined, drop: SeasonDrop,
): ResolvedLift {
  const { drop_ft } = drop
  // A number that somebody typed without having measured it is a guess as well.
  const whole = (from: ResolvedLift['from'], usual_ft: number, typed?: Evidence): ResolvedLift => ({ lift_ft: usual_ft + drop_ft, drop_ft, from, isGuess: from === 'assumed' || typed?.mark === 'assumed' })
  if (site.lift_ft !== undefined) return whole('plan', take(ledger, site, 'lift_ft', site.lift_ft, defaults.lift_ft), site.evidence?.lift_ft)
  if (draftSite?.lift_ft !== undefined) return whole('measured', take(ledger, draftSite, 'lift_ft', draftSite.lift_ft, defaults.lift_ft), draftSite.evidence?.lift_ft)
  const found = draftSite && findElevationLift(draftSite, source)
  if (!found) return whole('assumed', take(ledger, draftSite ?? site, 'lift_ft', undefined, defaults.lift_ft))
  const { lift_ft, doubt_ft, isPromise } = found
  if (!isPromise) return { ...whole('assumed', take(ledger, draftSite, 'lift_ft', undefined, defaults.lift_ft)), doubtful: { elevation_ft: lift_ft, doubt_ft } }
  const lift: Evidence = { mark: 'computed', source: 'bank and water surface elevations', ...(doubt_ft > 0 && { spreadShare: doubt_ft / lift_ft }) }
  return whole('elevations', take(ledger, { ...draftSite, evidence: { lift_ft: lift } }, 'lift_ft', lift_ft, defaults.lift_ft))
}

export type ElevationLift = {
  readonly lift_ft: number
  /** How far it may be off by what both heights say of themselves; 0 where they say nothing. */
  readonly doubt_ft: number
  /** The doubt is no more than the lift. */
  readonly isPromise: boolean
}

/** Lift by the heights of bank and water surface; undefined while one is not known. */
export function findElevationLift({ bankElevation_ft, intakeHeight_ft, evidence }: Pick<DraftSite, 'bankElevation_ft' | 'intakeHeight_ft' | 'evidence'>, source: Pick<Source, 'surfaceElevation_ft' | 'evidence'> | undefined): ElevationLift | undefined {
  if (bankElevation_ft === undefined || source?.surfaceElevation_ft === undefined) return undefined
  const lift_ft = bankElevation_ft + (intakeHeight_ft ?? defaults.intakeHeight_ft.value) - source.surfaceElevation_ft
  const doubt_ft = Math.hypot(statedDoubt_ft(bankElevation_ft, evidence?.bankElevation_ft), statedDoubt_ft(source.surfaceElevation_ft, source.evidence?.surfaceElevation_ft))
  return { lift_ft, doubt_ft, isPromise: doubt_ft === 0 || doubt_ft <= lift_ft }
}

/** How far an elevation may be off where its evidence says so; a share of a height above the sea means nothing by itself. */
const statedDoubt_ft = (elevation_ft: number, evidence: Evidence | undefined): number => Math.abs(elevation_ft) * (evidence?.spreadShare ?? 0)

/** What a plan says of a lift that nobody measured. */
export function liftIssues({ lift_ft, isGuess, doubtful }: Pick<ResolvedLift, 'lift_ft' | 'isGuess' | 'doubtful'>, subjectId: string): Issue[] {
  if (doubtful) return [issue('lift-doubtful', 'warn', [subjectId], { lift_ft, ...doubtful })]
  return isGuess ? [issue('lift-assumed', 'warn', [subjectId], { lift_ft })] : []
}
