import type { DraftSite, Source } from '../../plan'
import { defaults } from '../defaults'
import type { ResolvedLift } from '../drafting'
import type { Ledger } from '../ledger'
import type { Working, WorkingInput } from '../working'
import { given, working } from './inputs'

type Stands = { readonly ledger: Ledger; readonly lift: ResolvedLift; readonly draftSite: DraftSite | undefined; readonly source?: Source | undefined }

/**
 * A lift with what it is made of: as measured, or from the heights of bank and water, and the fall of the season.
 *
 * @param usual the lift without the season, where no elevations stand behind it
 */
export function explainLiftOf({ ledger, lift, draftSite, source }: Stands, usual: (usual_ft: number) => WorkingInput): Working {
  const base = lift.from === 'elevations' && draftSite ? heights({ ledger, draftSite, source }) : [usual(lift.lift_ft - lift.drop_ft)]
  const field = lift.drop_ft === source?.seasonalDrop_ft ? 'seasonalDrop_ft' : 'droughtDrop_ft'
  const fall = lift.drop_ft > 0 && source ? [given(ledger, source, field, lift.drop_ft)] : []
  return working(lift.from === 'elevations' ? 'lift-elevations' : 'lift-season', 'lift_ft', lift.lift_ft, '', [...base, ...fall])
}

const heights = ({ ledger, draftSite, source }: Pick<Stands, 'ledger' | 'source'> & { draftSite: DraftSite }): WorkingInput[] => [
  given(ledger, draftSite, 'bankElevation_ft', draftSite.bankElevation_ft ?? 0),
  draftSite.intakeHeight_ft === undefined
    ? { symbol: 'intakeHeight_ft', value: defaults.intakeHeight_ft.value, unit: 'ft', from: { itemId: draftSite.id, field: 'intakeHeight_ft', mark: defaults.intakeHeight_ft.mark, source: defaults.intakeHeight_ft.source } }
    : given(ledger, draftSite, 'intakeHeight_ft', draftSite.intakeHeight_ft),
  ...(source?.surfaceElevation_ft === undefined ? [] : [given(ledger, source, 'surfaceElevation_ft', source.surfaceElevation_ft)]),
]
