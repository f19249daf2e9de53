import { curveFlow_gpm, draftSupply, pumpCurve } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { arrangementAt, findEasedPoints, dischargeLimit_psi, type WorkingPoint } from './working-points'
import { bestArrangement, compileRelay, type Arrangement, type CompiledRelay, type Placed } from './arrangement'
import { placeOnLay } from './lay-line'
import { tankDraft } from './pumper-limits'
import { relayIssues } from './relay-issues'
import type { RelayPumperResult } from './relay-pumper-result'
import type { RelaySpec } from './spec'

/** Hose from one pumper to the next, or to the end of the lay. */
export type RelayLeg = {
  readonly fromId: string
  readonly toId?: string
  readonly from_ft: number
  readonly to_ft: number
  readonly friction_psi: number
  readonly rise_psi: number
  /** At its far end. */
  readonly arrival_psi: number
}

export type RelayResult = {
  readonly flow_gpm: number
  /** Those that stand, from the source on. */
  readonly pumpers: readonly RelayPumperResult[]
  /** At hand and not needed. */
  readonly spareIds: readonly string[]
  readonly legs: readonly RelayLeg[]
  readonly placed: readonly Placed[]
  readonly issues: readonly Issue[]
}

/** Intake relief above what stands at the intake. Handbook study cards (seen-2nd). */
const INTAKE_RELIEF_MARGIN_PSI = 10

export type RelayAsk = {
  /** No more than this is asked: pumpers and pressures are then those of the lesser flow. */
  readonly wanted_gpm?: number
  /** Where pumpers stand, the source first; the best places when absent. */
  readonly placed?: readonly Placed[]
}

/**
 * The most a relay carries, where its pumpers stand, and how each works.
 *
 * @param spec relay: source, pumpers, lay, ground, places allowed, pressures
 * @param ask  a flow wanted, or places given
 * @returns the answer; issues `relay-no-flow`, `relay-fall-over-hose` (block), `relay-below-wanted` and those of relayIssues
 * @throws RangeError if a number is out of range
 * @source own; README: why no other placing carries more
 */
export function planRelay(spec: RelaySpec, ask: RelayAsk = {}): RelayResult {
  return relayResult(compileRelay(spec), ask)
}

/** As planRelay, for a relay already compiled. */
export function relayResult(relay: CompiledRelay, { wanted_gpm, placed }: RelayAsk = {}): RelayResult {
  const arrangement = placed ? arrangementAt(relay, inOrder(placed), wanted_gpm) : bestArrangement(relay, wanted_gpm)
  const points = arrangement.flow_gpm > 0 ? findEasedPoints(relay, arrangement.placed, arrangement.flow_gpm) : undefined
  const usedIds = new Set(arrangement.placed.map(({ id }) => id))
  const spareIds = relay.spec.pumpers.map(({ id }) => id).filter((id) => !usedIds.has(id))
  if (!points) {
    return { flow_gpm: 0, pumpers: [], legs: [], spareIds, placed: arrangement.placed, issues: noFlowIssues(relay) }
  }
  const pumpers = points.map((point, i) => pumperResult(relay, arrangement, points, point, i))
  const issues = relayIssues(relay, arrangement, pumpers)
  if (wanted_gpm !== undefined && arrangement.flow_gpm < wanted_gpm * (1 - 1e-6)) issues.unshift(issue('relay-below-wanted', 'warn', [], { flow_gpm: arrangement.flow_gpm, wanted_gpm }))
  return { flow_gpm: arrangement.flow_gpm, pumpers, legs: legsOf(relay, arrangement, points), spareIds, placed: arrangement.placed, issues }
}

/** Why nothing arrives: where a closed relay's hose cannot bear the water standing from a crest above it, that alone forbids it. */
function noFlowIssues({ spec, line, wanted }: CompiledRelay): Issue[] {
  const issues = [issue('relay-no-flow', 'block', [spec.source.id], { length_ft: line.length_ft })]
  const crest = line.z_psi.reduce((worst, z_psi, i) => (z_psi - (line.ceiling_psi[i] ?? 0) > (line.z_psi[worst] ?? 0) - (line.ceiling_psi[worst] ?? 0) ? i : worst), 0)
  const over_psi = (line.z_psi[crest] ?? 0) + wanted.leastHose_psi - (line.ceiling_psi[crest] ?? 0)
  if (spec.mode === 'closed' && over_psi > 0) issues.push(issue('relay-fall-over-hose', 'block', [], { crest_ft: line.x_ft[crest] ?? 0, over_psi }))
  return issues
}

const inOrder = (placed: readonly Placed[]): Placed[] => [...placed].sort((a, b) => a.at_ft - b.at_ft)

function pumperResult(relay: CompiledRelay, { flow_gpm, placed }: Arrangement, points: readonly WorkingPoint[], point: WorkingPoint, index: number): RelayPumperResult {
  const { spec, line, source } = relay
  const here = placeOnLay(line, point.at_ft, flow_gpm)
  const discharge_psi = point.head_psi - here.z_psi - here.loss_psi
  const intake_psi = index === 0 ? source.intake_psi(flow_gpm) : point.intakeHead_psi === undefined ? undefined : point.intakeHead_psi - here.z_psi - here.loss_psi
  const most_gpm = mostAt_gpm(relay, point.id, discharge_psi, intake_psi)
  const standing = index > 0 && spec.mode === 'closed' ? standingAt(relay, points, index, flow_gpm) : undefined
  return {
    id: point.id, isSource: index === 0, at_ft: point.at_ft, height_ft: here.height_ft,
    intake_psi, discharge_psi, net_psi: intake_psi === undefined ? undefined : discharge_psi - intake_psi,
    most_gpm, capacityShare: most_gpm > 0 ? flow_gpm / most_gpm : 1,
    dischargeLimit_psi: dischargeLimit_psi(relay, placed, index, flow_gpm),
    ...standing,
  }
}

/** The most a pumper moves at its pressure. */
function mostAt_gpm({ spec }: CompiledRelay, id: string, discharge_psi: number, intake_psi: number | undefined): number {
  const { source } = spec
  const one = spec.pumpers.find((pumper) => pumper.id === id)
  const pumper = one?.pumper ?? (source.kind === 'draft' ? source.draft.pumper : source.pumper)
  if (intake_psi !== undefined) return curveFlow_gpm(pumpCurve(pumper.rated_gpm, pumper.curvePoints, pumper.overRating), Math.max(0, discharge_psi - intake_psi - 1e-4))
  const draft = one ? tankDraft(one, source) : source.kind === 'draft' ? source.draft : undefined
  return draft ? draftSupply(draft)(Math.max(0, discharge_psi - 1e-4)) : 0
}

/** What stands at an intake when nothing flows: pumps holding their pressure, and pumps idle. */
function standingAt({ line }: CompiledRelay, points: readonly WorkingPoint[], index: number, flow_gpm: number) {
  const at_ft = points[index]?.at_ft ?? 0
  const here = placeOnLay(line, at_ft, 0)
  let held_psi = -Infinity
  for (const { at_ft: from_ft, head_psi } of points.slice(0, index)) held_psi = Math.max(held_psi, head_psi - placeOnLay(line, from_ft, flow_gpm).loss_psi)
  const stoppedIntake_psi = held_psi - here.z_psi
  const highest_psi = line.x_ft.reduce((most, x_ft, i) => (x_ft <= at_ft ? Math.max(most, line.z_psi[i] ?? 0) : most), here.z_psi)
  const hose_psi = placeOnLay(line, Math.max(0, at_ft - 0.01), 0).working_psi
  return { stoppedIntake_psi, idleIntake_psi: highest_psi - here.z_psi, intakeRelief_psi: Math.min(stoppedIntake_psi + INTAKE_RELIEF_MARGIN_PSI, hose_psi) }
}

function legsOf({ line }: CompiledRelay, { flow_gpm }: Arrangement, points: readonly WorkingPoint[]): RelayLeg[] {
  return points.map((point, i) => {
    const to_ft = points[i + 1]?.at_ft ?? line.length_ft
    const near = placeOnLay(line, point.at_ft, flow_gpm), far = placeOnLay(line, to_ft, flow_gpm)
    return {
      fromId: point.id, toId: points[i + 1]?.id, from_ft: point.at_ft, to_ft,
      friction_psi: far.loss_psi - near.loss_psi, rise_psi: far.z_psi - near.z_psi, arrival_psi: point.head_psi - far.z_psi - far.loss_psi,
    }
  })
}
