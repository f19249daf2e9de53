import { nodeKind } from './node-traits'
import { roadFlag } from './road-flags'
import { flagsOfEdge, type RoadTables } from './road-graph'

const SHUT = roadFlag.noAccess | roadFlag.ford | roadFlag.reversible | roadFlag.impassable

/** Whether a small vehicle may leave `node` by `arc`: one-way, access, barriers and fords, but no weight, height or width. */
export function isPassableInGeneral(tables: RoadTables, node: number, arc: number): boolean {
  const kind = tables.nodeKind[node]
  if (kind === nodeKind.barrier || kind === nodeKind.ford) return false
  const flags = flagsOfEdge(tables, arc >>> 1)
  return (flags & SHUT) === 0 && (flags & (arc & 1 ? roadFlag.onewayForward : roadFlag.onewayBackward)) === 0
}
