import { MOST_PUMPERS, relayDefaults, type RelayPressures, type RelayPumper, type RelaySpec } from './spec'
import { draftDischarge_psi } from '../hydraulics'
import { requireNotNegative, requireThat } from '../issue'
import { findClosedStands, type Stand, type StandAsk } from './closed-stands'
import { layLine, type LayLine } from './lay-line'
import { findOpenStands } from './open-stands'
import { capped, netLimit, pumperKinds, sourceLimit, tankDraft, type PressureByFlow, type SourceLimit } from './pumper-limits'

/** A relay worked out once for all flows. */
export type CompiledRelay = {
  readonly spec: RelaySpec
  readonly line: LayLine
  readonly wanted: Required<RelayPressures>
  readonly source: SourceLimit
  /** By pumper: net pressure in a closed relay, discharge pressure in an open one. */
  readonly limits: ReadonlyMap<string, PressureByFlow>
  readonly ask: StandAsk
}

/** A pumper at its place in the lay. */
export type Placed = { readonly id: string; readonly at_ft: number }

/** The most a relay carries and where its pumpers stand then; the source first. */
export type Arrangement = { readonly flow_gpm: number; readonly placed: readonly Placed[] }

/**
 * Checks a relay and works out what does not change with the flow.
 *
 * @throws RangeError if a number is out of range, an id stands twice, or there are more than 12 pumpers beside the source
 */
export function compileRelay(spec: RelaySpec): CompiledRelay {
  const wanted = { ...relayDefaults, ...spec.wanted }
  for (const [name, value] of Object.entries(wanted)) requireNotNegative(name, value)
  requireThat(spec.pumpers.length <= MOST_PUMPERS, 'pumpers', spec.pumpers.length, `${MOST_PUMPERS} at most`)
  const ids = [spec.source.id, ...spec.pumpers.map(({ id }) => id)]
  requireThat(new Set(ids).size === ids.length, 'ids', ids.join(), 'each once')
  const line = layLine(spec.lay, spec.profile)
  const stations_ft = spec.stations_ft && [...new Set(spec.stations_ft)].filter((at_ft) => at_ft >= 0 && at_ft <= line.length_ft).sort((a, b) => a - b)
  const source = sourceLimit(spec.source, wanted.residual_psi)
  const limitOf = (one: RelayPumper): PressureByFlow => (spec.mode === 'closed' ? netLimit(one.pumper) : capped(draftDischarge_psi(tankDraft(one, spec.source)), one.mostDischarge_psi))
  return {
    spec, line, wanted, source, limits: new Map(spec.pumpers.map((one) => [one.id, limitOf(one)])),
    ask: { line, source, wanted, kinds: pumperKinds(spec.pumpers, limitOf), stations_ft },
  }
}

const SEARCH_STEPS = 44
/** Below this a relay carries nothing. */
const LEAST_GPM = 1

/**
 * Largest flow for which something holds that holds for every smaller flow too.
 *
 * @param most_gpm where it cannot hold any more, or the most that is asked
 * @returns [gpm]; 0 when it does not hold at 1 gpm
 */
export function largestFlow_gpm(holds: (flow_gpm: number) => boolean, most_gpm: number): number {
  if (most_gpm < LEAST_GPM || !holds(LEAST_GPM)) return 0
  if (holds(most_gpm)) return most_gpm
  let low = LEAST_GPM, high = most_gpm
  for (let i = 0; i < SEARCH_STEPS; i++) {
    const middle = (low + high) / 2
    if (holds(middle)) low = middle
    else high = middle
  }
  return low
}

/** Stands for a flow, the fewest pumpers and these at the least effort that carries it; undefined when it cannot be carried. */
function findStands({ spec, ask }: CompiledRelay, flow_gpm: number): { readonly stands: readonly Stand[]; readonly effortShare: number } | undefined {
  const find = spec.mode === 'closed' ? findClosedStands : findOpenStands
  const full = find(ask, flow_gpm)
  if (!full) return undefined
  let stands = full, low = 0, high = 1
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    const eased = find(ask, flow_gpm, middle)
    if (eased && eased.length <= full.length) {
      high = middle
      stands = eased
    } else low = middle
  }
  return { stands, effortShare: high }
}

/**
 * The most a relay carries with the pumpers and hose at hand, and where the fewest of them stand for it.
 *
 * Among places that carry it, those are taken at which the hardest-driven pump works least.
 *
 * @param relay    from compileRelay
 * @param most_gpm no more than this is asked; default what the source pumper's curve gives
 * @returns flow 0 and only the source when nothing arrives
 */
export function bestArrangement(relay: CompiledRelay, most_gpm = relay.source.mostFlow_gpm): Arrangement {
  const { spec, ask } = relay
  const find = spec.mode === 'closed' ? findClosedStands : findOpenStands
  const flow_gpm = largestFlow_gpm((flow) => find(ask, flow) !== undefined, Math.min(most_gpm, relay.source.mostFlow_gpm))
  const found = flow_gpm > 0 ? findStands(relay, flow_gpm) : undefined
  if (!found) return { flow_gpm: 0, placed: [{ id: spec.source.id, at_ft: 0 }] }
  const taken = ask.kinds.map(() => 0)
  const placed = found.stands.map(({ at_ft, kind }) => {
    if (kind === undefined) return { id: spec.source.id, at_ft }
    const turn = taken[kind] ?? 0
    taken[kind] = turn + 1
    return { id: ask.kinds[kind]?.ids[turn] ?? '', at_ft }
  })
  return { flow_gpm, placed }
}
