import { isPassableInGeneral } from './passable-in-general'
import { headOfArc, type RoadTables } from './road-graph'

/**
 * Groups of nodes that can reach each other and back, by the general rules of the road.
 * Small groups are islands in the data: a yard, a clipped one-way, a road beyond a ford.
 *
 * @source strongly connected components after R. Tarjan, 1972, without recursion
 */
export function componentsOf(tables: RoadTables, outStart: Uint32Array, outArc: Uint32Array): { component: Uint32Array; componentSize: Uint32Array } {
  const nodeCount = tables.nodeLatE7.length
  const UNSEEN = -1
  const order = new Int32Array(nodeCount).fill(UNSEEN)
  const low = new Int32Array(nodeCount)
  const isOpen = new Uint8Array(nodeCount)
  const nextArc = new Uint32Array(nodeCount)
  const component = new Uint32Array(nodeCount)
  const sizes: number[] = []
  const open: number[] = []
  const path: number[] = []
  let seen = 0
  for (let root = 0; root < nodeCount; root++) {
    if (order[root] !== UNSEEN) continue
    path.push(root)
    while (path.length > 0) {
      const node = path[path.length - 1] ?? 0
      if (order[node] === UNSEEN) {
        order[node] = low[node] = seen++
        nextArc[node] = outStart[node] ?? 0
        isOpen[node] = 1
        open.push(node)
      }
      const at = nextArc[node] ?? 0
      if (at < (outStart[node + 1] ?? 0)) {
        nextArc[node] = at + 1
        const arc = outArc[at] ?? 0
        if (!isPassableInGeneral(tables, node, arc)) continue
        const head = headOfArc(tables, arc)
        if (order[head] === UNSEEN) path.push(head)
        else if (isOpen[head]) low[node] = Math.min(low[node] ?? 0, order[head] ?? 0)
        continue
      }
      path.pop()
      const parent = path[path.length - 1]
      if (parent !== undefined) low[parent] = Math.min(low[parent] ?? 0, low[node] ?? 0)
      if (low[node] === order[node]) {
        let size = 0
        for (let member = open.pop(); member !== undefined; member = open.pop()) {
          isOpen[member] = 0
          component[member] = sizes.length
          size++
          if (member === node) break
        }
        sizes.push(size)
      }
    }
  }
  return { component, componentSize: Uint32Array.from(sizes) }
}
