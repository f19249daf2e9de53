import { compileRelay, type Placed } from './arrangement'
import { findWorkingPoints, arrangementAt } from './working-points'
import { relayResult, type RelayResult } from './relay-result'
import type { LaySegment, RelaySpec } from './spec'

/** What is left when one pumper stops and its water goes round it. */
export type PumperStop = {
  readonly id: string
  /** The most the others carry from where they stand, through one more fitting where it stood. */
  readonly flow_gpm: number
  /** How they work then; no pumpers when nothing arrives. */
  readonly result: RelayResult
  /** True when the flow they carried before goes on unchanged. */
  readonly keepsFlow: boolean
}

/**
 * For each pumper of a relay in turn: it stops, its hose is joined round it, the others stay where they stand.
 *
 * The source pumper has no other to draw water: the relay stops until one takes its place.
 *
 * @param spec   as for planRelay
 * @param placed where they stand, source first
 * @param flow_gpm carried before
 */
export function pumperStops(spec: RelaySpec, placed: readonly Placed[], flow_gpm: number): PumperStop[] {
  return placed.map(({ id, at_ft }, i) => {
    if (i === 0) return { id, flow_gpm: 0, keepsFlow: false, result: { flow_gpm: 0, pumpers: [], legs: [], spareIds: [], placed: [], issues: [] } }
    const relay = compileRelay({ ...spec, lay: withFitting(spec.lay, at_ft) })
    const left = placed.filter((one) => one.id !== id)
    const flow = arrangementAt(relay, left).flow_gpm
    return { id, flow_gpm: flow, result: relayResult(relay, { placed: left }), keepsFlow: findWorkingPoints(relay, left, flow_gpm) !== undefined }
  })
}

/** The lay with one more fitting at a place. */
function withFitting(lay: readonly LaySegment[], at_ft: number): LaySegment[] {
  let start_ft = 0
  return lay.map((segment, i) => {
    const from_ft = start_ft
    start_ft += segment.length_ft
    const isHere = at_ft >= from_ft && (at_ft < start_ft || i === lay.length - 1)
    return isHere ? { ...segment, appliances: [...(segment.appliances ?? []), { at_ft: Math.min(segment.length_ft, at_ft - from_ft), kind: 'fitting' }] } : segment
  })
}
