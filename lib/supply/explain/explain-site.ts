import type { DumpSite, FillSite } from '../../plan'
import type { CompiledPlan } from '../compile-plan'
import type { ResolvedDumpSite } from '../dump-site'
import type { ResolvedFillSite } from '../fill-site'
import type { Working, WorkingInput } from '../working'
import { explainLiftOf } from './explain-lift'
import { coefficientOfSize } from '../hose-lay/lay-hose'
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
  const assumed = (field: string) => ledger.assumptions.get(`${site.id}/${field}`)?.value ?? 0
  return working('fill-rate', 'rate_gpm', rate_gpm, 'hose friction FL = C (Q/100)² L/100; inlet limit 100 psi and 1,000 gpm (trade articles)', [
    ...(draft ? [worked('draft_gpm', draft)] : []),
    computed('bayCount', busy),
    ...lineInputs(compiled, site, 'fillLine', site.fillLine ?? { size_in: assumed('fillLineSize_in'), length_ft: assumed('fillLineLength_ft') }),
    ...(fillCase ? [computed('pumpPressure_psi', fillCase.pumpPressure_psi), computed('inletPressure_psi', fillCase.inletPressures_psi[0] ?? 0)] : []),
  ])
}

/** What the pumper at a dump site can send on. */
export function explainDumpPump(compiled: CompiledPlan, { site, pump_gpm, line }: ResolvedDumpSite): Working {
  const { ledger, bundle } = compiled
  const pump = bundle.district.apparatus.find(({ id }) => id === site.pumperId)
  return working(line ? 'dump-line' : 'dump-pump', 'flow_gpm', pump_gpm, line ? `hose friction FL = C (Q/100)² L/100; ${LOSS_TABLE}` : LOSS_TABLE, [
    ...(pump && pump.kind !== 'tender' ? [given(ledger, pump, 'rated_gpm', pump.rated_gpm ?? 0)] : []),
    ...(['dumpLift_ft', 'dumpDischarge_psi', 'layOutlet_psi'] as const).flatMap((field) => {
      const noted = ledger.assumptions.get(`${site.id}/${field}`)
      return noted ? [given(ledger, site, field, noted.value)] : []
    }),
    ...(site.supplyLine && line ? [
      ...lineInputs(compiled, site, 'supplyLine', site.supplyLine),
      computed('supplyLineCount', site.supplyLine.lineCount ?? 1),
      given(ledger, site, 'supplyLineRise_ft', site.supplyLineRise_ft ?? 0),
      computed('pumpPressure_psi', line.discharge_psi),
    ] : []),
  ])
}

/** Size and length of a line, each with the evidence of its part, and the friction of its hose. */
function lineInputs({ ledger, bundle }: CompiledPlan, site: FillSite | DumpSite, part: 'fillLine' | 'supplyLine', { size_in, length_ft }: { readonly size_in: number; readonly length_ft: number }): WorkingInput[] {
  const friction = coefficientOfSize(bundle.district, size_in)
  return [
    given(ledger, site, `${part}Size_in`, size_in, `${part}Size_in`, `${part}.size_in`),
    given(ledger, site, `${part}Length_ft`, length_ft, `${part}Length_ft`, `${part}.length_ft`),
    friction.coefficientFrom === 'stock'
      ? given(ledger, friction.hose, 'coefficient', friction.coefficient)
      : { symbol: 'coefficient', value: friction.coefficient, unit: '', from: { itemId: '', field: 'coefficient', mark: 'handbook', source: 'friction coefficients by size; the larger where sources differ' } },
  ]
}
