import type { Issue } from '../../issue'
import { findDraftingPump, type Bundle, type Lay } from '../../plan'
import {
  pressurePlot, pumperStops, ratingNeeded_gpm, relayGains, startSteps, stopSteps,
  type PlotPoint, type PumperStop, type RelayGain, type RelayLeg, type RelayPumperResult, type RelayStep, type SetUpTime,
} from '../../relay'
import type { Assumption } from '../result'
import type { HoseNeed } from './hose-needed'
import { draftIssues, layFlow, riseDoubt } from './lay-flow'
import type { LayHeights } from './lay-ground'
import type { LayPlaces } from './lay-key'
import type { LaidStretch } from './lay-hose'

/** A pumper of the lay at work, beside its rating and what the hand rule asks for. */
export type LayPumper = RelayPumperResult & {
  readonly rated_gpm: number
  /** By the trade's hand rule; absent above its last point. */
  readonly handRating_gpm?: number
}

/** One pumper stops, its water goes round it; the others work at the most they carry then, or at the flow before where they keep it. */
export type LayStop = {
  readonly id: string
  readonly flow_gpm: number
  readonly keepsFlow: boolean
  readonly pumpers: readonly Pick<RelayPumperResult, 'id' | 'intake_psi' | 'discharge_psi' | 'dischargeLimit_psi'>[]
}

/** All that is said of one hose lay. */
export type HoseLayAnswer = {
  readonly layId: string
  /** What the pumpers below work at: the flow wanted, or the most. Absent where an issue blocks. */
  readonly flow_gpm?: number
  readonly most_gpm?: number
  /** The most it carries if the far end stands higher by the doubt of the heights. */
  readonly doubted?: { readonly more_ft: number; readonly most_gpm: number }
  readonly way_ft: number
  readonly hose_ft?: number
  readonly rise_ft: number
  readonly heights: LayHeights
  readonly lift_ft?: number
  readonly ground: readonly { readonly at_ft: number; readonly height_ft: number }[]
  readonly stretches: readonly LaidStretch[]
  readonly pumpers: readonly LayPumper[]
  readonly spareIds: readonly string[]
  readonly legs: readonly RelayLeg[]
  readonly plot: readonly PlotPoint[]
  readonly hose: readonly HoseNeed[]
  readonly time?: SetUpTime
  readonly start: readonly RelayStep[]
  readonly stop: readonly RelayStep[]
  readonly stops: readonly LayStop[]
  readonly gains: readonly RelayGain[]
  readonly assumptions: readonly Assumption[]
  readonly issues: readonly Issue[]
}

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Gains below this no gauge shows. */
const LEAST_GAIN_GPM = 5

/**
 * What a hose lay of a plan carries, where each pumper stands and how it works, the hose and time it takes, the orders of
 * starting and shutting down, and what is left when one pumper stops.
 *
 * @param docs    district and plan
 * @param lay     one of the plan's
 * @param places heights along the lay's points, from profileAlong, and where pumpers can stand; without heights the entered rise counts
 * @returns the answer; with a blocking issue only the ground and the issues. Issues of compileLay, hoseNeeded, relayResult, of
 *   drafting and `lay-rise-doubt` (note)
 * @source lib/relay/README.md
 */
export function answerLay(docs: Docs, lay: Lay, places?: LayPlaces): HoseLayAnswer {
  const { compiled, found } = layFlow(docs, lay, places)
  const { spec, ground, ledger, hose } = compiled
  const common = { layId: lay.id, way_ft: ground.way_ft, rise_ft: ground.rise_ft, heights: ground.heights, ...(compiled.lift_ft !== undefined && { lift_ft: compiled.lift_ft }) }
  if (!spec || !hose || !found) {
    return {
      ...common, ground: ground.profile.map(({ distance_ft, height_ft }) => ({ at_ft: distance_ft, height_ft })), stretches: [], pumpers: [], spareIds: [], legs: [], plot: [],
      hose: [], start: [], stop: [], stops: [], gains: [], assumptions: [...ledger.assumptions.values()], issues: compiled.issues,
    }
  }
  const { relay, result, most_gpm, needed, doubted, time } = found
  const pumpers = result.pumpers.map((one) => layPumper(docs, one, result.flow_gpm))
  return {
    ...common, flow_gpm: result.flow_gpm, most_gpm, ...(doubted && { doubted }), hose_ft: hose.hose_ft,
    ground: spec.profile.map(({ distance_ft, height_ft }) => ({ at_ft: distance_ft, height_ft })), stretches: hose.stretches,
    pumpers, spareIds: result.spareIds, legs: result.legs, plot: pressurePlot(relay, result), hose: needed.needs,
    ...(time && { time }),
    start: startSteps(result, spec.mode), stop: stopSteps(result, spec.mode),
    stops: result.flow_gpm > 0 ? pumperStops(spec, result.placed, result.flow_gpm).map(layStop) : [],
    gains: relayGains(spec).filter(({ gain_gpm }) => gain_gpm >= LEAST_GAIN_GPM),
    assumptions: [...ledger.assumptions.values()],
    issues: [
      ...compiled.issues, ...result.issues, ...needed.issues, ...draftIssues(compiled, result),
      ...(doubted ? [riseDoubt(lay.id, ground.rise_ft, doubted)] : []),
    ],
  }
}

function layStop({ id, flow_gpm, keepsFlow, result }: PumperStop): LayStop {
  return {
    id, flow_gpm, keepsFlow,
    pumpers: result.pumpers.map(({ id: other, intake_psi, discharge_psi, dischargeLimit_psi }) => ({ id: other, discharge_psi, dischargeLimit_psi, ...(intake_psi !== undefined && { intake_psi }) })),
  }
}

function layPumper(docs: Docs, one: RelayPumperResult, flow_gpm: number): LayPumper {
  const hand_gpm = one.discharge_psi > 0 ? ratingNeeded_gpm(flow_gpm, one.discharge_psi) : undefined
  return { ...one, rated_gpm: findDraftingPump(docs, one.id)?.rated_gpm ?? 0, ...(hand_gpm !== undefined && Number.isFinite(hand_gpm) && { handRating_gpm: hand_gpm }) }
}
