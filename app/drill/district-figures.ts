import { plausibleRig, type DrillPumper, type DrillSite } from '@/lib/priming/drill'
import type { District, DraftSite, Pumper } from '@/lib/plan'
import { LOOP_PRESSURE_PSI, loopFlow_gpm } from '@/lib/priming'
import { backUpInputs, findDraftSheet, primingOf } from '@/lib/supply'

export type NamedFigures = { readonly rig: DrillPumper & { readonly name: string }; readonly site: DrillSite & { readonly name: string } }

/** A flow at which the tank line is told; its drop says the rest. */
const TOLD_GPM = 500

/**
 * What the drill asks of a pumper at a draft site, from the same sheet that the back-up prime card is computed with:
 * the card and the drill stand on the same numbers.
 *
 * @returns undefined for a pumper without a rated capacity
 */
export function findDistrictFigures(district: District, draftSite: DraftSite, pumper: Pumper): NamedFigures | undefined {
  const sheet = findDraftSheet(district, draftSite, pumper)
  if (!sheet) return undefined
  const { rig: loop } = backUpInputs(pumper, sheet)
  const { suction, place } = sheet
  return {
    rig: {
      name: pumper.name, rated_gpm: pumper.rated_gpm, tank_gal: loop.tank_gal, tankHeight_ft: loop.tankTop_ft,
      tankToPump_gpm: TOLD_GPM, tankToPumpDrop_ft: (TOLD_GPM / loop.tankToPump_gpmPerSqrtFt) ** 2,
      tankFill_in: pumper.tankFill_in, tankFill_gpm: loopFlow_gpm(loop.tankFill_gpmPerSqrtPsi, 1, LOOP_PRESSURE_PSI, plausibleRig.tankFillBack_psi), 
      primer_gpm: pumper.primer_gpm === 0 ? 0 : primingOf(sheet, pumper).capacity_gpm,
      dryVacuum_inHg: pumper.dryVacuum_inHg, dryVacuumAltitude_ft: pumper.dryVacuumAltitude_ft,
      suction_in: suction.size_in, suction_ft: suction.length_ft, suctionLineCount: suction.lineCount, intake: suction.intake,
    },
    site: { name: draftSite.name, lift_ft: place.lift_ft, depth_ft: draftSite.strainerCover_ft, altitude_ft: place.altitude_ft, water_degF: place.water_degF },
  }
}
