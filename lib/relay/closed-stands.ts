import { placeOnLay } from './lay-line'
import type { PumperKind, SourceLimit } from './pumper-limits'
import { PRESSURE_GRAIN_PSI, findFarthest, pressuresBetween } from './reach'
import type { RelayPressures } from './spec'
import type { LayLine } from './lay-line'

/** What a search for stands works on. */
export type StandAsk = {
  readonly line: LayLine
  readonly source: SourceLimit
  readonly kinds: readonly PumperKind[]
  readonly wanted: Required<RelayPressures>
  readonly stations_ft?: readonly number[]
}

/** Where one pumper stands: the source pumper at 0 has no kind. */
export type Stand = { readonly at_ft: number; readonly kind?: number }

type Node = { readonly at_ft: number; readonly head_psi: number; readonly kind?: number; readonly before?: Node }

/**
 * Where the fewest pumpers stand so that a closed relay carries a flow to the end of its lay.
 *
 * Each stands as far along as the water still reaches it with the residual, at the first-met allowed place; every order of
 * unlike pumpers is tried. README: no other placing carries more.
 *
 * @param ask         lay, source, pumpers and pressures
 * @param flow_gpm    above 0
 * @param effortShare of each pumper's pressure at that flow that may be used, 0 to 1
 * @returns the source's stand, then the others'; undefined when the flow cannot be carried
 */
export function findClosedStands(ask: StandAsk, flow_gpm: number, effortShare = 1): Stand[] | undefined {
  const { line, source, kinds, wanted: { residual_psi, leastHose_psi } } = ask
  const discharge_psi = source.discharge_psi(flow_gpm)
  if (discharge_psi === undefined) return undefined
  const boosts_psi = kinds.map(({ limit_psi }) => limit_psi(flow_gpm))
  const headBehind = (head_psi: number, at_ft: number) => {
    const { ceiling_psi, loss_psi } = placeOnLay(line, at_ft, flow_gpm)
    return Math.min(head_psi, ceiling_psi + loss_psi)
  }
  const start = placeOnLay(line, 0, flow_gpm)
  let layer = new Map<string, Node[]>([[kinds.map(() => 0).join(), [{ at_ft: 0, head_psi: headBehind(effortShare * discharge_psi + start.z_psi + start.loss_psi, 0) }]]])
  while (layer.size > 0) {
    for (const nodes of layer.values()) {
      const arrived = nodes.find((node) => reachesEnd(ask, flow_gpm, node))
      if (arrived) return pathTo(arrived)
    }
    const next = new Map<string, Node[]>()
    for (const [key, nodes] of layer) {
      const used = key === '' ? [] : key.split(',').map(Number)
      for (const node of nodes) {
        const at_ft = findFarthest(line, { flow_gpm, from_ft: node.at_ft, head_psi: node.head_psi, end_psi: residual_psi, least_psi: leastHose_psi }, ask.stations_ft)
        if (at_ft === undefined) continue
        kinds.forEach(({ ids, mostDischarge_psi = Infinity }, kind) => {
          const boost_psi = boosts_psi[kind]
          if (boost_psi === undefined || (used[kind] ?? 0) >= ids.length) return
          const here = placeOnLay(line, at_ft, flow_gpm)
          const run_psi = Math.max(node.head_psi, mostDischarge_psi + here.z_psi + here.loss_psi)
          const head_psi = headBehind(Math.min(node.head_psi + effortShare * boost_psi, run_psi), at_ft)
          if (head_psi <= node.head_psi + PRESSURE_GRAIN_PSI) return
          keepBest(next, used.map((count, i) => (i === kind ? count + 1 : count)).join(), { at_ft, head_psi, kind, before: node })
        })
      }
    }
    layer = next
  }
  return undefined
}

function reachesEnd({ line, wanted: { leastHose_psi, outlet_psi } }: StandAsk, flow_gpm: number, { at_ft, head_psi }: Node): boolean {
  const { least_psi, end_psi } = pressuresBetween(line, flow_gpm, head_psi, at_ft, line.length_ft)
  return end_psi >= outlet_psi - PRESSURE_GRAIN_PSI && least_psi >= Math.min(leastHose_psi, outlet_psi) - PRESSURE_GRAIN_PSI
}

/** Of nodes that used the same pumpers, those that are neither behind another one nor below it. */
function keepBest(layer: Map<string, Node[]>, key: string, node: Node): void {
  const kept = layer.get(key) ?? []
  const isNoWorse = (a: Node, b: Node) => a.at_ft >= b.at_ft && a.head_psi >= b.head_psi
  if (kept.some((other) => isNoWorse(other, node))) return
  layer.set(key, [...kept.filter((other) => !isNoWorse(node, other)), node])
}

function pathTo(node: Node): Stand[] {
  const before = node.before ? pathTo(node.before) : []
  return [...before, { at_ft: node.at_ft, kind: node.kind }]
}
