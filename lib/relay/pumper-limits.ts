import { draftDischarge_psi, findPressureForFlow_psi, hydrantResidual_psi, pumpCurve, ratedSuction, type DraftAsk } from '../hydraulics'
import { TANK_LIFT_FT, type RelayPumper, type RelaySource } from './spec'

/** Most pressure by flow; undefined where the pump, or what feeds it, does not give that flow at all. Never rising. */
export type PressureByFlow = (flow_gpm: number) => number | undefined

/** A source of pressure and what each part of it is. */
export type SourceLimit = {
  /** Highest discharge pressure at a flow. */
  readonly discharge_psi: PressureByFlow
  /** At the intake at a flow: what a hydrant leaves; undefined at draft. */
  readonly intake_psi: PressureByFlow
  readonly mostFlow_gpm: number
}

/**
 * Highest discharge pressure of the source pumper by flow, and what stands at its intake.
 *
 *   draft: net(Q) − (lift + suction loss) / 2.3 · hydrant: what the main leaves + net(Q), no less than `residual_psi` left; no more than it is run at
 *
 * @source draftDischarge_psi; hydrantResidual_psi
 */
export function sourceLimit(source: RelaySource, residual_psi: number): SourceLimit {
  const limit = pumpLimit(source, residual_psi)
  const { mostDischarge_psi } = source
  return mostDischarge_psi === undefined ? limit : { ...limit, discharge_psi: capped(limit.discharge_psi, mostDischarge_psi, limit.intake_psi) }
}

/** No more than a pump is run at; what arrives under more than that goes through it all the same. */
export function capped(limit_psi: PressureByFlow, most_psi: number | undefined, intake_psi: PressureByFlow = () => undefined): PressureByFlow {
  if (most_psi === undefined) return limit_psi
  return (flow_gpm) => {
    const psi = limit_psi(flow_gpm)
    return psi === undefined ? undefined : Math.max(Math.min(psi, most_psi), intake_psi(flow_gpm) ?? 0)
  }
}

function pumpLimit(source: RelaySource, residual_psi: number): SourceLimit {
  if (source.kind === 'draft') {
    return { discharge_psi: draftDischarge_psi(source.draft), intake_psi: () => undefined, mostFlow_gpm: mostFlow_gpm(source.draft.pumper) }
  }
  const net_psi = netLimit(source.pumper)
  const intake_psi = (flow_gpm: number) => hydrantResidual_psi(source.hydrant, flow_gpm)
  return {
    intake_psi, mostFlow_gpm: mostFlow_gpm(source.pumper),
    discharge_psi: (flow_gpm) => {
      const left_psi = intake_psi(flow_gpm), net = net_psi(flow_gpm)
      return net === undefined || left_psi < residual_psi ? undefined : left_psi + net
    },
  }
}

/**
 * Highest net pressure of a pumper in the line by flow. What arrives at its intake is pressure it need not make: the
 * rating points are net ones.
 *
 * @source findPressureForFlow_psi
 */
export function netLimit({ rated_gpm, curvePoints, overRating }: RelayPumper['pumper']): PressureByFlow {
  const curve = pumpCurve(rated_gpm, curvePoints, overRating)
  return (flow_gpm) => findPressureForFlow_psi(curve, flow_gpm)
}

const mostFlow_gpm = ({ rated_gpm, curvePoints, overRating }: RelayPumper['pumper']): number => pumpCurve(rated_gpm, curvePoints, overRating).flows_gpm[0] ?? 0

/** How a pumper drafts from its portable tank: as told, else through its rated suction from a tank on level ground. */
export const tankDraft = ({ pumper, tankDraft: own }: RelayPumper, source: RelaySource): Omit<DraftAsk, 'ask'> => own ?? {
  pumper, suction: ratedSuction(pumper.rated_gpm).suction,
  place: { ...(source.kind === 'draft' ? source.draft.place : { altitude_ft: 1000, water_degF: 60 }), lift_ft: TANK_LIFT_FT },
}

/** Pumpers that are alike are one kind: which of them stands first makes no difference. */
export type PumperKind = { readonly ids: readonly string[]; readonly limit_psi: PressureByFlow; readonly mostDischarge_psi?: number }

/**
 * Pumpers by kind, in the order given; the limit is net pressure in a closed relay, discharge pressure in an open one.
 */
export function pumperKinds(pumpers: readonly RelayPumper[], limitOf: (pumper: RelayPumper) => PressureByFlow): PumperKind[] {
  const kinds = new Map<string, { ids: string[]; limit_psi: PressureByFlow; mostDischarge_psi?: number }>()
  for (const one of pumpers) {
    const key = JSON.stringify([one.pumper, one.tankDraft, one.mostDischarge_psi])
    const kind = kinds.get(key)
    if (kind) kind.ids.push(one.id)
    else kinds.set(key, { ids: [one.id], limit_psi: limitOf(one), ...(one.mostDischarge_psi !== undefined && { mostDischarge_psi: one.mostDischarge_psi }) })
  }
  return [...kinds.values()]
}
