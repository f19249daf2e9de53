import { HEIGHT_M, isInFrame, WIDTH_M, type Spot } from '../frame'
import type { Landscape } from '../build-landscape'
import { findCrossing } from '../geometry/line'
import { gap, spot } from '../geometry/spot'
import { mappedStreams } from '../land/mapped-streams'
import type { Network, Road, RoadNode, Tags } from '../roads/network'
import { bridgeNotes, inspectedRoads, stretchPlans, underpassTags } from '../roads/stretch-plan'
import { findCrossings, nodesAround, piecesOf, type Stretch } from '../roads/stretches'
import type { OsmStore } from './osm-store'

const FORDED = new Set(['fordlane'])
const BRIDGE_HALF_M = { river: 19, stream: 8 } as const

/** No left turn from Main Street, eastbound, into Mill Street: the corner is blind. */
const noTurn = { fromRoad: 'sr88', toRoad: 'millstreet', via: [5590, 5378], fromSide: [5520, 5360] } as const

/** Roads and railway as ways: cut at the frame, at bridges and wherever a tag changes. */
export function addRoads(store: OsmStore, land: Landscape): void {
  const { network, railway, streams } = land
  const stretches = new Map<Road, Stretch[]>()
  const add = (road: Road, stretch: Stretch): void => void stretches.set(road, [...(stretches.get(road) ?? []), stretch])
  const nodeTags = new Map<RoadNode, Tags>()

  for (const road of network.roads) trimToFrame(network, road)
  for (const { road: key, from, to, tags } of stretchPlans) {
    const road = network.road(key)
    add(road, { from: network.cut(road, spot(...from)), to: network.cut(road, spot(...to)), tags })
  }
  for (const { road, spot: at, stream } of findCrossings(network, mappedStreams(streams))) {
    if (!isInFrame(at)) continue
    if (road.tags.highway === 'track' || FORDED.has(road.key)) {
      nodeTags.set(network.cut(road, at), { ford: 'yes' })
      continue
    }
    const note = bridgeNotes.find(({ near }) => gap(spot(...near), at) < 60)
    add(road, {
      ...nodesAround(network, road, at, BRIDGE_HALF_M[stream.kind]),
      tags: { bridge: 'yes', layer: '1', ...(inspectedRoads.has(road.key) ? { maxweight: 'none' } : {}), ...note?.tags },
    })
  }
  const depot = network.road('depotstreet')
  add(depot, { ...nodesAround(network, depot, land.underpass, 9), tags: underpassTags })
  add(railway, { ...nodesAround(network, railway, land.underpass, 12), tags: { bridge: 'yes', layer: '1' } })
  for (const node of land.levelCrossings) nodeTags.set(node, { railway: 'level_crossing' })

  const via = network.road(noTurn.toRoad).nodes[0]!
  const breaks = new Set([via])
  const ids = new Map<RoadNode, number>()
  const idOf = (node: RoadNode): number => {
    const known = ids.get(node)
    if (known !== undefined) return known
    const id = store.addNode(node.spot, nodeTags.get(node))
    ids.set(node, id)
    return id
  }
  const turn: { from?: number; to?: number } = {}
  for (const road of network.roads) {
    if (road.nodes.length < 2) continue
    for (const { nodes, tags } of piecesOf(road, stretches.get(road) ?? [], breaks)) {
      if (nodes.length < 2) continue
      const id = store.addWay(nodes.map(idOf), tags)
      if (road.key === noTurn.toRoad && nodes[0] === via) turn.to = id
      if (road.key === noTurn.fromRoad && nodes[nodes.length - 1] === via) turn.from = id
    }
  }
  if (turn.from === undefined || turn.to === undefined) throw new RangeError('the turn restriction found no road to stand on')
  store.addRelation(
    [{ type: 'way', ref: turn.from, role: 'from' }, { type: 'node', ref: idOf(via), role: 'via' }, { type: 'way', ref: turn.to, role: 'to' }],
    { type: 'restriction', restriction: 'no_left_turn' },
  )
}

/** Roads end on the edge of the map. */
function trimToFrame(network: Network, road: Road): void {
  const first = road.nodes.findIndex(({ spot: at }) => isInFrame(at))
  if (first < 0) {
    road.nodes = []
    return
  }
  const last = road.nodes.length - 1 - [...road.nodes].reverse().findIndex(({ spot: at }) => isInFrame(at))
  const kept = road.nodes.slice(first, last + 1)
  const before = road.nodes[first - 1]
  const after = road.nodes[last + 1]
  if (before) kept.unshift(network.node(edgeSpot(before.spot, kept[0]!.spot)))
  if (after) kept.push(network.node(edgeSpot(after.spot, kept[kept.length - 1]!.spot)))
  road.nodes = kept
}

function edgeSpot(outside: Spot, inside: Spot): Spot {
  const corners = [spot(0, 0), spot(WIDTH_M, 0), spot(WIDTH_M, HEIGHT_M), spot(0, HEIGHT_M)]
  for (let i = 0; i < 4; i++) {
    const crossing = findCrossing(outside, inside, corners[i]!, corners[(i + 1) % 4]!)
    if (crossing) return crossing.spot
  }
  return inside
}
