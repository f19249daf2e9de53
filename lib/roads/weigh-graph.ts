import { distanceM } from '../geo'
import type { Issue } from '../issue'
import { DEGREES_E7 } from '../osm'
import { FEET_PER_MILE, feetFromMetres } from '../units'
import { nodeKind } from './node-traits'
import { roadFlag } from './road-flags'
import { arcCountOf, headOfArc, type RoadGraph } from './road-graph'
import { placeNotes, type NotedEdge, type NoteHold, type RoadNoteLike } from './road-note'
import { completeVehicle, type Vehicle, type VehicleMeasure } from './vehicle'

/** Why an arc cannot be driven; `open` when it can. */
const blockReasons = ['open', 'closed', 'weight', 'height', 'width', 'access', 'ford', 'impassable', 'reversible', 'oneWay'] as const
export type BlockReason = (typeof blockReasons)[number]
const code = Object.fromEntries(blockReasons.map((reason, i) => [reason, i])) as Readonly<Record<BlockReason, number>>

/** A graph as one vehicle meets it. */
export type RoadWeights = {
  readonly vehicle: Required<Vehicle>
  /** Measures nobody gave, taken at the largest ordinary size. */
  readonly assumed: readonly VehicleMeasure[]
  /** Driving time of each arc, Infinity where it cannot be driven. */
  readonly drive_s: Float64Array
  /** Driving and waiting time of each arc. */
  readonly arc_s: Float64Array
  /** Index in `blockReasons` of each arc. */
  readonly reason: Uint8Array
  /** 1 for nodes that cannot be driven through. */
  readonly isNodeShut: Uint8Array
  /** 1 for nodes where the only way on is back: the one place where a route may turn round. */
  readonly isTurnRound: Uint8Array
  readonly noted: ReadonlyMap<number, NotedEdge>
  readonly holds: readonly NoteHold[]
  readonly issues: readonly Issue[]
  /** A note makes some road quicker or more open than the data does: lower bounds from the data do not hold. */
  readonly isEased: boolean
}

/** Feet a second at one mile an hour. */
const FEET_PER_SECOND_PER_MPH = FEET_PER_MILE / 3600

/** How near a note must be to a barrier to open it. */
const BARRIER_REACH_FT = 100

/** Posted limits are held as single-precision numbers: one that equals the vehicle does not stop it. */
const exceeds = (measure: number, limit: number): boolean => measure > limit * (1 + 1e-6)

/**
 * Travel time of every arc for one vehicle, or why it cannot be driven.
 *
 * @param vehicle as it is on this way (loaded or empty); what is unknown is taken at the largest ordinary size
 * @param notes   the officer's own postings and closures, which override the data
 * @returns the weighted graph; issues `road-note-off-network`
 * @throws RangeError if a measure is given and not above 0
 */
export function weighGraph(graph: RoadGraph, vehicle: Vehicle, notes: readonly RoadNoteLike[] = []): RoadWeights {
  const { vehicle: complete, assumed } = completeVehicle(vehicle)
  const { noted, holds, issues } = placeNotes(graph, notes)
  const arcCount = arcCountOf(graph)
  const drive_s = new Float64Array(arcCount), arc_s = new Float64Array(arcCount), reason = new Uint8Array(arcCount)
  const roadReason = new Uint8Array(graph.roadId.length)
  for (let road = 0; road < roadReason.length; road++) roadReason[road] = reasonOfRoad(graph, road, complete)
  const noNote = undefined
  let isEased = false
  for (let edge = 0; edge < graph.edgeRoad.length; edge++) {
    const road = graph.edgeRoad[edge] ?? 0
    const note = noted.size > 0 ? noted.get(edge) : noNote
    const shared = note ? reasonWithNote(graph, road, complete, note) : (roadReason[road] ?? 0)
    const flags = graph.roadFlags[road] ?? 0
    const length_ft = graph.edgeLength_ft[edge] ?? 0
    for (let side = 0; side < 2; side++) {
      const arc = 2 * edge + side
      const found = shared !== code.open ? shared : isAgainst(flags, side, note) ? code.oneWay : code.open
      const mapped_mph = (side ? graph.roadSpeedBackward_mph : graph.roadSpeedForward_mph)[road] ?? 0
      const speed_mph = note?.speed_mph ?? mapped_mph
      reason[arc] = found
      drive_s[arc] = found === code.open ? length_ft / (speed_mph * FEET_PER_SECOND_PER_MPH) : Infinity
      arc_s[arc] = (drive_s[arc] ?? 0) + (graph.arcDelay_s[arc] ?? 0)
      if (note && (speed_mph > mapped_mph || (found === code.open && (isAgainst(flags, side, undefined) || ruleReason(flags) !== code.open)))) isEased = true
    }
  }
  const isNodeShut = shutNodes(graph, noted)
  if (isNodeShut.isEased) isEased = true
  return {
    vehicle: complete, assumed, drive_s, arc_s, reason, isNodeShut: isNodeShut.shut,
    isTurnRound: turnRounds(graph, drive_s), noted, holds, issues, isEased,
  }
}

/** Driving time of an arc if nothing forbade it. */
export function driveWithoutRules_s(graph: RoadGraph, arc: number): number {
  const road = graph.edgeRoad[arc >>> 1] ?? 0
  const speed_mph = (arc & 1 ? graph.roadSpeedBackward_mph : graph.roadSpeedForward_mph)[road] ?? 0
  return (graph.edgeLength_ft[arc >>> 1] ?? 0) / (speed_mph * FEET_PER_SECOND_PER_MPH)
}

/** Whether an arc runs against a one-way rule, whatever else closes it. */
export const isAgainstOneWay = (graph: RoadGraph, weights: RoadWeights, arc: number): boolean =>
  isAgainst(graph.roadFlags[graph.edgeRoad[arc >>> 1] ?? 0] ?? 0, arc & 1, weights.noted.get(arc >>> 1))

/** Why a vehicle does not drive an arc, or `open`. */
export const reasonOfArc = (weights: RoadWeights, arc: number): BlockReason => blockReasons[weights.reason[arc] ?? 0] ?? 'open'

/** Whether any arc of an edge can be driven. */
export const isEdgeUsable = (weights: RoadWeights, edge: number): boolean => weights.reason[2 * edge] === code.open || weights.reason[2 * edge + 1] === code.open

function sizeReason({ gross_lb, height_ft, width_ft }: Required<Vehicle>, maxWeight_lb: number, maxHeight_ft: number, maxWidth_ft: number): number {
  // Comparisons with NaN are false: an unknown limit stops nobody here, and is cautioned on the route.
  if (exceeds(gross_lb, maxWeight_lb)) return code.weight
  if (exceeds(height_ft, maxHeight_ft)) return code.height
  return exceeds(width_ft, maxWidth_ft) ? code.width : code.open
}

function ruleReason(flags: number): number {
  if (flags & roadFlag.noAccess) return code.access
  if (flags & roadFlag.ford) return code.ford
  if (flags & roadFlag.impassable) return code.impassable
  return flags & roadFlag.reversible ? code.reversible : code.open
}

function reasonOfRoad(graph: RoadGraph, road: number, vehicle: Required<Vehicle>): number {
  const size = sizeReason(vehicle, graph.roadMaxWeight_lb[road] ?? NaN, graph.roadMaxHeight_ft[road] ?? NaN, graph.roadMaxWidth_ft[road] ?? NaN)
  return size !== code.open ? size : ruleReason(graph.roadFlags[road] ?? 0)
}

function reasonWithNote(graph: RoadGraph, road: number, vehicle: Required<Vehicle>, note: NotedEdge): number {
  if (note.closed === true) return code.closed
  const size = sizeReason(
    vehicle,
    note.maxWeight_lb ?? graph.roadMaxWeight_lb[road] ?? NaN,
    note.maxHeight_ft ?? graph.roadMaxHeight_ft[road] ?? NaN,
    note.maxWidth_ft ?? graph.roadMaxWidth_ft[road] ?? NaN,
  )
  if (size !== code.open) return size
  return note.closed === false ? code.open : ruleReason(graph.roadFlags[road] ?? 0)
}

function isAgainst(flags: number, side: number, note: NotedEdge | undefined): boolean {
  if (note?.oneWay !== undefined) return note.oneWay === (side ? 'forward' : 'backward')
  return (flags & (side ? roadFlag.onewayForward : roadFlag.onewayBackward)) !== 0
}

function shutNodes(graph: RoadGraph, noted: ReadonlyMap<number, NotedEdge>): { shut: Uint8Array; isEased: boolean } {
  const shut = graph.nodeKind.map((kind) => (kind === nodeKind.barrier || kind === nodeKind.ford ? 1 : 0))
  let isEased = false
  for (const [edge, note] of noted) {
    if (note.closed !== false) continue
    for (const node of [graph.edgeFrom[edge] ?? 0, graph.edgeTo[edge] ?? 0]) {
      const place = { lat: (graph.nodeLatE7[node] ?? 0) / DEGREES_E7, lon: (graph.nodeLonE7[node] ?? 0) / DEGREES_E7 }
      if (shut[node] && note.points.some((point) => feetFromMetres(distanceM(point, place)) <= BARRIER_REACH_FT)) {
        shut[node] = 0
        isEased = true
      }
    }
  }
  return { shut, isEased }
}

/** Nodes with at most one way out. */
export function turnRounds(graph: RoadGraph, drive_s: Float64Array): Uint8Array {
  const waysOut = new Uint8Array(graph.nodeLatE7.length)
  for (let arc = 0; arc < drive_s.length; arc++) {
    if (drive_s[arc] === Infinity) continue
    const tail = headOfArc(graph, arc ^ 1)
    waysOut[tail] = Math.min(2, (waysOut[tail] ?? 0) + 1)
  }
  return waysOut.map((count) => (count <= 1 ? 1 : 0))
}
