import { markOf, type EvidenceMark } from '@/lib/evidence'
import type { DraftSheet } from '@/lib/supply'
import { formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/draft'

type Sheet = Pick<DraftSheet, 'lift' | 'drop' | 'draftSite' | 'ledger'>

/** How the lift of the usual level is known: by its mark, or from where it was taken. */
function liftKnownBy({ lift, draftSite, ledger }: Sheet): EvidenceMark | 'plan' | 'elevations' {
  if (lift.from === 'elevations' || lift.from === 'assumed') return lift.from
  const mark = ledger.numbers.get(`${draftSite.id}/lift_ft`)?.mark ?? 'assumed'
  return lift.from === 'plan' && mark === 'assumed' ? 'plan' : mark
}

/** What a lift is made of: "18.5 ft measured + 1.4 ft dry season"; undefined where nothing is added. */
export function liftSum(sheet: Sheet, system: UnitSystem): string | undefined {
  const { lift, drop } = sheet
  if (lift.drop_ft === 0) return undefined
  return say('draft.lift.sum', {
    usual: formatQuantity(lift.lift_ft - lift.drop_ft, 'ft', system), known: say(`draft.lift.known.${liftKnownBy(sheet)}`),
    fall: formatQuantity(lift.drop_ft, 'ft', system), season: say(`draft.season.name.${drop.counted}`),
  })
}

/** The lift in a line: "19.9 ft (18.5 ft measured + 1.4 ft dry season)", "10 ft assumed". */
export function liftText(sheet: Sheet, system: UnitSystem): string {
  const lift = formatQuantity(sheet.lift.lift_ft, 'ft', system)
  const sum = liftSum(sheet, system)
  if (sum !== undefined) return say('draft.lift.with-sum', { lift, sum })
  return isLiftAssumed(sheet) ? say('draft.lift.with-mark', { lift, known: say('draft.lift.known.assumed') }) : lift
}

/** Nobody has measured it, or whoever entered it said that it is a guess. */
export const isLiftAssumed = (sheet: Sheet): boolean => liftKnownBy(sheet) === 'assumed'

/** What of the place nobody has measured, as a sentence; undefined where all is. */
export function placeDoubt(sheet: Sheet, system: UnitSystem): string | undefined {
  const { draftSite, lift } = sheet
  const hasDepth = draftSite.strainerCover_ft !== undefined && markOf(draftSite.evidence, 'strainerCover_ft') !== 'assumed'
  const isAssumed = isLiftAssumed(sheet)
  if (hasDepth && !isAssumed) return undefined
  return say('draft.doubt', {
    about: isAssumed && !hasDepth ? 'both' : isAssumed ? 'lift' : 'depth',
    depth: draftSite.strainerCover_ft === undefined ? 'unknown' : 'assumed',
    lift: formatQuantity(lift.lift_ft - lift.drop_ft, 'ft', system),
  })
}
