import { issue, type Issue } from '../issue'
import { MISSING_NODE, type OsmExtract, type OsmRelation } from '../osm'
import { isRestriction } from '../osm/kept-tags'
import { nodeIndexFromId } from '../osm/sorted-ids'
import type { RoadTables } from './road-graph'
import { TurnAutomaton, type BannedRun, type TurnTables } from './turn-automaton'

type EdgeTables = Pick<RoadTables, 'edgeFrom' | 'edgeTo'>

/** Why a restriction was left out. */
type Refusal = 'conditional' | 'exempt' | 'incomplete' | 'ambiguous' | 'unknown-kind'

/**
 * Turns the restriction relations into banned runs of arcs, over one node or over whole
 * roads between. Restrictions that hold at certain hours only, and those at the border of
 * the data, are left out and counted.
 *
 * @param wayOfRoad     way index of each road
 * @param roadFirstEdge first edge of each road; a road's edges are consecutive
 * @param graphNodeOf   graph node of a node index, −1 if none
 */
export function turnTablesOf(
  extract: OsmExtract,
  edges: EdgeTables,
  wayOfRoad: readonly number[],
  roadFirstEdge: Uint32Array,
  graphNodeOf: (nodeIndex: number) => number,
): { turns: TurnTables; issues: Issue[] } {
  const roadOfWayId = new Map(wayOfRoad.map((way, road) => [extract.wayId[way] ?? NaN, road]))
  const finder = new ArcFinder(edges, roadFirstEdge)
  const refused: Partial<Record<Refusal, number>> = {}
  const runs: BannedRun[] = []
  let usedCount = 0
  for (const relation of extract.relations) {
    if (!isRestriction(relation.tags)) continue
    const found = bannedRunsOf(relation, roadOfWayId, finder, (id) => {
      const index = nodeIndexFromId(extract.nodeId, id)
      return index === MISSING_NODE ? -1 : graphNodeOf(index)
    })
    if (typeof found === 'string') refused[found] = (refused[found] ?? 0) + 1
    else {
      usedCount++
      runs.push(...found)
    }
  }
  const issues = Object.keys(refused).length > 0 ? [issue('roads-restrictions-unused', 'note', [], { usedCount, ...refused })] : []
  return { turns: new TurnAutomaton(edges, runs).tables(), issues }
}

/** Kind of a restriction for a heavy apparatus, or why it does not count. */
function kindOf({ tags }: OsmRelation): { kind: string } | Refusal {
  if ((tags['except'] ?? '').split(/[;,]/).some((vehicle) => vehicle.trim() === 'emergency')) return 'exempt'
  const kind = tags['restriction'] ?? tags['restriction:motor_vehicle'] ?? tags['restriction:hgv']
  if (kind === undefined) return tags['restriction:conditional'] === undefined ? 'unknown-kind' : 'conditional'
  return /^(no|only)_[a-z_]+$/.test(kind) ? { kind } : 'unknown-kind'
}

function bannedRunsOf(
  relation: OsmRelation,
  roadOfWayId: ReadonlyMap<number, number>,
  finder: ArcFinder,
  graphNodeOfId: (id: number) => number,
): BannedRun[] | Refusal {
  const kind = kindOf(relation)
  if (typeof kind === 'string') return kind
  const inRole = (role: string) => relation.members.filter((member) => member.role === role)
  const roadsIn = (role: string): (number | undefined)[] =>
    inRole(role).flatMap((member) => (member.kind === 'way' ? [roadOfWayId.get(member.id)] : []))
  const froms = roadsIn('from'), tos = roadsIn('to'), viaRoads = roadsIn('via')
  const viaNodes = inRole('via').flatMap((member) => (member.kind === 'node' ? [graphNodeOfId(member.id)] : []))
  if (froms.length === 0 || tos.length === 0 || viaRoads.length + viaNodes.length === 0) return 'incomplete'
  const runs: BannedRun[] = []
  for (const from of froms) {
    for (const to of tos) {
      if (from === undefined || to === undefined || viaRoads.includes(undefined)) return 'incomplete'
      const arcs = viaRoads.length > 0
        ? finder.arcsThroughRoads(from, viaRoads.flatMap((road) => (road === undefined ? [] : [road])), to)
        : finder.arcsAtNode(from, viaNodes[0] ?? -1, to)
      if (typeof arcs === 'string') return arcs
      runs.push({ arcs, isOnly: kind.kind.startsWith('only_') })
    }
  }
  return runs
}

/** Finds the arcs that roads mean at a place. */
class ArcFinder {
  constructor(
    private readonly edges: EdgeTables,
    private readonly roadFirstEdge: Uint32Array,
  ) {}

  /** Arcs of a road that leave a node. */
  private leaving(road: number, node: number): number[] {
    const arcs: number[] = []
    for (let edge = this.roadFirstEdge[road] ?? 0; edge < (this.roadFirstEdge[road + 1] ?? 0); edge++) {
      if (this.edges.edgeFrom[edge] === node) arcs.push(2 * edge)
      if (this.edges.edgeTo[edge] === node) arcs.push(2 * edge + 1)
    }
    return arcs
  }

  /** From road, node, road: where a road runs on past the node on both sides, which side is meant is not said. */
  arcsAtNode(from: number, node: number, to: number): number[] | Refusal {
    if (node < 0) return 'incomplete'
    const entering = this.leaving(from, node).map((arc) => arc ^ 1)
    const leaving = this.leaving(to, node)
    const [arcIn] = entering, [arcOut] = leaving
    if (arcIn === undefined || arcOut === undefined) return 'incomplete'
    if (entering.length > 1 || leaving.length > 1) return 'ambiguous'
    return [arcIn, arcOut]
  }

  /** From road, whole roads in order, road: each touches the next with an end. */
  arcsThroughRoads(from: number, via: readonly number[], to: number): number[] | Refusal {
    const chains = via.map((road) => this.chainOf(road))
    const found: number[][] = []
    const [first] = via
    if (first === undefined) return 'incomplete'
    const follow = (step: number, node: number, arcs: readonly number[]): void => {
      const chain = chains[step]
      if (chain === undefined) {
        for (const arc of this.leaving(to, node)) found.push([...arcs, arc])
        return
      }
      if (chain.nodes[0] === node) follow(step + 1, chain.nodes[chain.nodes.length - 1] ?? -1, [...arcs, ...chain.arcs])
      else if (chain.nodes[chain.nodes.length - 1] === node) {
        follow(step + 1, chain.nodes[0] ?? -1, [...arcs, ...chain.arcs.map((arc) => arc ^ 1).reverse()])
      }
    }
    for (const node of new Set([chains[0]?.nodes[0] ?? -1, chains[0]?.nodes.at(-1) ?? -1])) {
      for (const arc of this.leaving(from, node)) follow(0, node, [arc ^ 1])
    }
    const [only] = found
    if (only === undefined) return 'incomplete'
    return found.length > 1 ? 'ambiguous' : only
  }

  /** Nodes and forward arcs of a whole road in order. */
  private chainOf(road: number): { nodes: number[]; arcs: number[] } {
    const nodes: number[] = [], arcs: number[] = []
    for (let edge = this.roadFirstEdge[road] ?? 0; edge < (this.roadFirstEdge[road + 1] ?? 0); edge++) {
      if (nodes.length === 0) nodes.push(this.edges.edgeFrom[edge] ?? -1)
      nodes.push(this.edges.edgeTo[edge] ?? -1)
      arcs.push(2 * edge)
    }
    return { nodes, arcs }
  }
}
