import type { CompiledPlan } from '../compile-plan'
import type { ResolvedDumpSite } from '../dump-site'
import type { ResolvedFillSite } from '../fill-site'
import type { Working } from '../working'
import { explainLiftOf } from './explain-lift'
import { computed, given, worked, working } from './inputs'

const LOSS_TABLE = 'friction and entrance loss of hard suction, NFPA 1901 and handbook (common figures, not checked against a published table); lift law calibrated on the classical lift table'

/** What the pumper drafts at a fill site, or undefined where nothing is drafted. */
export function explainDraft({ ledger, bundle }: CompiledPlan, { site, source, pump, draft, lift }: ResolvedFillSite): Working | undefined {
  if (!draft || !pump) return undefined
  const draftSite = bundle.district.draftSites.find(({ id }) => id === site.draftSiteId)
  const usual = (usual_ft: number) => given(ledger, site.lift_ft === undefined && draftSite ? draftSite : site, 'lift_ft', usual_ft)
  return working(draft.limitedBy === 'pump' ? 'draft-pump-side' : 'draft-suction-side', 'flow_gpm', draft.flow_gpm, LOSS_TABLE, [
    given(ledger, pump, 'rated_gpm', pump.rated_gpm ?? 0),
    // A lift that is more than one number somebody read says what it is made of.
    ...(lift ? [lift.drop_ft > 0 || lift.from === 'elevations' ? worked('lift_ft', explainLiftOf({ ledger, lift, draftSite, source }, usual)) : usual(lift.lift_ft)] : []),
    computed('availableHead_ft', draft.availableHead_ft, 'air less vapor less lift'),
    computed('suctionLoss_ft', draft.suctionLoss_ft),
    computed('requiredHead_ft', draft.requiredHead_ft),
    computed('margin_ft', draft.margin_ft),
    computed('suctionSide_gpm', draft.suctionSide_gpm),
    computed('pumpSide_gpm', draft.pumpSide_gpm),
    computed('netPressure_psi', draft.netPressure_psi),
    computed('discharge_psi', draft.discharge_psi),
  ])
}

/** The rate into one tender when it fills alone. */
export function explainBayRate(compiled: CompiledPlan, fill: ResolvedFillSite, busy = 1): Working {
  const { ledger } = compiled
  const { site, fillCase } = fill
  const rate_gpm = fill.bayRate_gpm[busy - 1] ?? 0
  if (fill.limit === 'measured') return working('fill-measured', 'rate_gpm', rate_gpm, site.evidence?.rate_gpm?.source ?? '', [given(ledger, site, 'rate_gpm', site.rate_gpm ?? rate_gpm)])
  const draft = explainDraft(compiled, fill)
  return working('fill-rate', 'rate_gpm', rate_gpm, 'hose friction FL = C (Q/100)² L/100; inlet limit 100 psi and 1,000 gpm (trade articles)', [
    ...(draft ? [worked('draft_gpm', draft)] : []),
    computed('bayCount', busy),
    given(ledger, site, 'fillLineSize_in', site.fillLine?.size_in ?? ledger.assumptions.get(`${site.id}/fillLineSize_in`)?.value ?? 0),
    given(ledger, site, 'fillLineLength_ft', site.fillLine?.length_ft ?? ledger.assumptions.get(`${site.id}/fillLineLength_ft`)?.value ?? 0),
    ...(fillCase ? [computed('pumpPressure_psi', fillCase.pumpPressure_psi), computed('inletPressure_psi', fillCase.inletPressures_psi[0] ?? 0)] : []),
  ])
}

/** What the pumper at a dump site can send on. */
export function explainDumpPump({ ledger, bundle }: CompiledPlan, { site, pump_gpm, line }: ResolvedDumpSite): Working {
  const pump = bundle.district.apparatus.find(({ id }) => id === site.pumperId)
  return working(line ? 'dump-line' : 'dump-pump', 'flow_gpm', pump_gpm, line ? `hose friction FL = C (Q/100)² L/100; ${LOSS_TABLE}` : LOSS_TABLE, [
    ...(pump && pump.kind !== 'tender' ? [given(ledger, pump, 'rated_gpm', pump.rated_gpm ?? 0)] : []),
    ...(['dumpLift_ft', 'dumpDischarge_psi', 'layOutlet_psi'] as const).flatMap((field) => {
      const noted = ledger.assumptions.get(`${site.id}/${field}`)
      return noted ? [given(ledger, site, field, noted.value)] : []
    }),
    ...(site.supplyLine && line ? [
      given(ledger, site, 'supplyLineSize_in', site.supplyLine.size_in),
      given(ledger, site, 'supplyLineLength_ft', site.supplyLine.length_ft),
      computed('supplyLineCount', site.supplyLine.lineCount ?? 1),
      given(ledger, site, 'supplyLineRise_ft', site.supplyLineRise_ft ?? 0),
      computed('pumpPressure_psi', line.discharge_psi),
    ] : []),
  ])
}
