import { InitHydOption, LinkProperty, NodeProperty, Project, Workspace } from 'epanet-js'
import { hardSuctionLoss_ft, hoseCoefficient } from '@/lib/hydraulics'
import type { RelayResult, RelaySpec } from '@/lib/relay'

/** Feet of water a psi as the network solver has it: 1 / 0.4333. */
const FT_PER_PSI = 1 / 0.4333
const GPM_PER_CFS = 448.831
const GRAVITY = 32.2
/** All pipes are a foot wide: only their loss coefficient, h = K V² / 2g, does anything. */
const WIDTH_IN = 12

/** K of a pipe a foot wide that loses this much at 1 gpm, which makes its law the hose's: loss by the square of the flow. */
const lossFactor = (resistance_ftPerGpm2: number): number => (resistance_ftPerGpm2 * GPM_PER_CFS ** 2 * Math.PI ** 2 * GRAVITY) / 8

export type NetworkAnswer = {
  readonly flow_gpm: number
  /** By pumper: at its intake and its discharge. */
  readonly pumpers: readonly { readonly intake_psi: number; readonly discharge_psi: number }[]
  readonly end_psi: number
}

/**
 * The same relay in a general solver of pipe networks: reservoirs at both ends, each line of hose a pipe of its own, each
 * pumper a pump whose curve runs through the net pressure we say it makes at our flow. The solver finds the flow itself.
 */
export async function solveNetwork(spec: RelaySpec, result: RelayResult): Promise<NetworkAnswer> {
  const junctions: string[] = [], reservoirs: string[] = [], pipes: string[] = [], pumps: string[] = [], curves: string[] = []
  const heightAt = (x: number) => {
    const after = spec.profile.findIndex(({ distance_ft }) => distance_ft >= x)
    const high = spec.profile[after], low = spec.profile[after - 1]
    if (!high || !low) return (high ?? spec.profile[spec.profile.length - 1])?.height_ft ?? 0
    return low.height_ft + ((x - low.distance_ft) * (high.height_ft - low.height_ft)) / (high.distance_ft - low.distance_ft)
  }
  const pipe = (id: string, from: string, to: string, K: number) => pipes.push(`${id} ${from} ${to} 0.01 ${WIDTH_IN} 100000 ${K} Open`)
  const pump = (id: string, from: string, to: string, net_psi: number) => {
    curves.push(`c${id} ${result.flow_gpm} ${net_psi * FT_PER_PSI}`)
    pumps.push(`${id} ${from} ${to} HEAD c${id}`)
  }

  const { source } = spec, first = result.pumpers[0]
  if (!first) throw new Error('no relay to check')
  const base_ft = heightAt(0)
  junctions.push(`in0 ${base_ft} 0`, `out0 ${base_ft} 0`)
  if (source.kind === 'draft') {
    const { suction, place } = source.draft
    if (Array.isArray(suction) || !('size_in' in suction)) throw new Error('one plain suction is checked')
    const loss_ft = hardSuctionLoss_ft({ size_in: suction.size_in, lineCount: suction.lineCount, length_ft: suction.length_ft, flow_gpm: 1000 })
    reservoirs.push(`water ${base_ft - place.lift_ft}`)
    pipe('suction', 'water', 'in0', lossFactor(loss_ft / 1000 ** 2))
    pump('pump0', 'in0', 'out0', first.discharge_psi + (place.lift_ft + loss_ft * (result.flow_gpm / 1000) ** 2) / FT_PER_PSI)
  } else {
    // A hydrant main: the pressure it is left with at this flow.
    reservoirs.push(`water ${base_ft + (first.intake_psi ?? 0) * FT_PER_PSI}`)
    pipe('main', 'water', 'in0', 1e-6)
    pump('pump0', 'in0', 'out0', first.discharge_psi - (first.intake_psi ?? 0))
  }

  const ends = spec.lay.reduce<number[]>((list, { length_ft }) => [...list, (list[list.length - 1] ?? 0) + length_ft], [0])
  const whole_ft = ends[ends.length - 1] ?? 0
  const fittings = spec.lay.flatMap(({ appliances = [] }, i) => appliances.map(({ at_ft }) => (ends[i] ?? 0) + at_ft))
  const places = [...new Set([...ends, ...spec.profile.map(({ distance_ft }) => distance_ft), ...result.pumpers.map(({ at_ft }) => at_ft), ...fittings])].filter((x) => x <= whole_ft).sort((a, b) => a - b)
  let node = 'out0', turn = 0
  places.forEach((x, i) => {
    const before_ft = places[i - 1]
    if (before_ft === undefined) return
    const segment = spec.lay[ends.findLastIndex((start, k) => k < spec.lay.length && start <= before_ft)]
    const isEnd = i === places.length - 1
    const name = `n${i}`
    junctions.push(`${name} ${heightAt(x)} 0`)
    for (const [k, { size_in, coefficient }] of (segment?.lines ?? []).entries()) {
      const C = coefficient ?? hoseCoefficient(size_in).coefficient
      pipe(`h${i}_${k}`, node, name, lossFactor(((C * (x - before_ft)) / 1e6) * FT_PER_PSI))
    }
    node = name
    const count = result.flow_gpm >= 350 ? fittings.filter((at) => at === x).length : 0
    if (count > 0) {
      junctions.push(`f${i} ${heightAt(x)} 0`)
      pipe(`fit${i}`, node, `f${i}`, lossFactor((10 * count * FT_PER_PSI) / result.flow_gpm ** 2))
      node = `f${i}`
    }
    const stands = result.pumpers.find((one, k) => k === turn + 1 && one.at_ft === x)
    if (stands) {
      turn++
      junctions.push(`in${turn} ${heightAt(x)} 0`, `out${turn} ${heightAt(x)} 0`)
      pipe(`join${turn}`, node, `in${turn}`, 1e-6)
      pump(`pump${turn}`, `in${turn}`, `out${turn}`, stands.net_psi ?? NaN)
      node = `out${turn}`
    }
    if (isEnd) {
      junctions.push(`end ${heightAt(x)} 0`)
      pipe('last', node, 'end', 1e-6)
      reservoirs.push(`fire ${heightAt(x) + (spec.wanted?.outlet_psi ?? 20) * FT_PER_PSI}`)
      pipe('mouth', 'end', 'fire', 1e-6)
    }
  })

  const text = [
    '[JUNCTIONS]', ...junctions, '[RESERVOIRS]', ...reservoirs, '[PIPES]', ...pipes, '[PUMPS]', ...pumps, '[CURVES]', ...curves,
    '[OPTIONS]', 'UNITS GPM', 'HEADLOSS H-W', 'TRIALS 500', 'ACCURACY 0.000001', '[TIMES]', 'DURATION 0', '[END]', '',
  ].join('\n')
  const workspace = new Workspace()
  await workspace.loadModule()
  const project = new Project(workspace)
  workspace.writeFile('relay.inp', text)
  project.open('relay.inp', 'relay.rpt', 'relay.out')
  project.openH()
  project.initH(InitHydOption.NoSave)
  project.runH()
  const pressureAt = (id: string) => project.getNodeValue(project.getNodeIndex(id), NodeProperty.Pressure)
  const answer = {
    flow_gpm: project.getLinkValue(project.getLinkIndex('pump0'), LinkProperty.Flow),
    pumpers: result.pumpers.map((_, i) => ({ intake_psi: pressureAt(`in${i}`), discharge_psi: pressureAt(`out${i}`) })),
    end_psi: pressureAt('end'),
  }
  project.closeH()
  project.close()
  return answer
}
