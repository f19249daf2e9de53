import type { Stand, StandAsk } from './closed-stands'
import { placeOnLay } from './lay-line'
import { PRESSURE_GRAIN_PSI } from './reach'

/** Places tried along a lay where a pumper may stand anywhere. */
const GRID_COUNT = 80

/**
 * Where the fewest pumpers stand so that an open relay carries a flow: each leg, from one portable tank to the next, on
 * its own.
 *
 * What arrives in a tank has lost its pressure, so a place farther along may be worse than a nearer and higher one: all
 * allowed places are tried. Where any place is allowed, the breakpoints of the lay and a grid of 1/80 of it are.
 *
 * @param ask      as for a closed relay; the pumpers' limits are discharge pressures at draft from a tank
 * @param flow_gpm above 0
 * @param effortShare of each pumper's pressure at that flow that may be used, 0 to 1
 * @returns the source's stand, then the others'; undefined when the flow cannot be carried
 */
export function findOpenStands(ask: StandAsk, flow_gpm: number, effortShare = 1): Stand[] | undefined {
  const { line, source, kinds } = ask
  const discharge_psi = source.discharge_psi(flow_gpm)
  if (discharge_psi === undefined) return undefined
  const points = openPoints(ask, flow_gpm)
  const limits_psi = kinds.map(({ limit_psi }) => limit_psi(flow_gpm))
  const known = new Map<number, Reach>()
  const reachOf = (kind: number, at: number): Reach => {
    const key = kind * points.length + at
    const found = known.get(key) ?? legReach(ask, points, at, effortShare * (limits_psi[kind] ?? 0))
    known.set(key, found)
    return found
  }
  type Node = { at: number; kind?: number; before?: Node }
  const first = legReach(ask, points, 0, effortShare * discharge_psi)
  if (first.reachesEnd) return [{ at_ft: 0 }]
  const pathTo = ({ at, kind, before }: Node): Stand[] => [...(before ? pathTo(before) : []), { at_ft: points[at]?.x_ft ?? line.length_ft, kind }]
  const source0: Node = { at: 0 }
  const seen = new Set<string>()
  let layer: { used: readonly number[]; at: number; from: Node }[] = first.tanks.map((at) => ({ used: kinds.map(() => 0), at, from: source0 }))
  while (layer.length > 0) {
    const next: typeof layer = []
    for (const { used, at, from } of layer) {
      for (const [kind, { ids }] of kinds.entries()) {
        if (limits_psi[kind] === undefined || (used[kind] ?? 0) >= ids.length) continue
        const node: Node = { at, kind, before: from }
        const reach = reachOf(kind, at)
        if (reach.reachesEnd) return pathTo(node)
        const after = used.map((count, i) => (i === kind ? count + 1 : count))
        for (const tank of reach.tanks) {
          const key = `${after.join()}@${tank}`
          if (seen.has(key)) continue
          seen.add(key)
          next.push({ used: after, at: tank, from: node })
        }
      }
    }
    layer = next
  }
  return undefined
}

type OpenPoint = { readonly x_ft: number; readonly z_psi: number; readonly loss_psi: number; readonly behind_psi: number; readonly isStation: boolean }
type Reach = { readonly tanks: readonly number[]; readonly reachesEnd: boolean }

function openPoints({ line, stations_ft }: StandAsk, flow_gpm: number): OpenPoint[] {
  const grid = stations_ft ?? Array.from({ length: GRID_COUNT }, (_, i) => (line.length_ft * i) / GRID_COUNT)
  const x_ft = [...new Set([...line.x_ft, ...grid.filter((x) => x >= 0 && x <= line.length_ft)])].sort((a, b) => a - b)
  return x_ft.map((x, i) => {
    const place = placeOnLay(line, x, flow_gpm), next = placeOnLay(line, x_ft[i + 1] ?? x, flow_gpm)
    // Working pressure of the hose from here to the next point, as a head without losses.
    return { x_ft: x, z_psi: place.z_psi, loss_psi: place.loss_psi, behind_psi: place.working_psi + Math.min(place.z_psi, next.z_psi), isStation: !stations_ft || stations_ft.includes(x) }
  })
}

/** Tanks that a pumper at a point can fill, and whether it can fill the end of the lay. */
function legReach({ wanted: { leastHose_psi, outlet_psi, tankInlet_psi } }: StandAsk, points: readonly OpenPoint[], at: number, discharge_psi: number): Reach {
  const start = points[at]
  if (!start) return { tanks: [], reachesEnd: false }
  const tanks: number[] = []
  let held_psi = discharge_psi + start.z_psi, needed_psi = -Infinity
  for (let k = at + 1; k < points.length; k++) {
    const point = points[k], before = points[k - 1]
    if (!point || !before) break
    held_psi = Math.min(held_psi, before.behind_psi)
    const head_psi = held_psi + start.loss_psi + PRESSURE_GRAIN_PSI
    const used_psi = point.z_psi + point.loss_psi
    if (k === points.length - 1) {
      const least_psi = Math.min(leastHose_psi, outlet_psi) - leastHose_psi
      return { tanks, reachesEnd: Math.max(needed_psi + least_psi, outlet_psi + used_psi) <= head_psi }
    }
    if (point.isStation && Math.max(needed_psi, tankInlet_psi + used_psi) <= head_psi) tanks.push(k)
    needed_psi = Math.max(needed_psi, leastHose_psi + used_psi)
    if (needed_psi - leastHose_psi > head_psi) break
  }
  return { tanks, reachesEnd: false }
}
