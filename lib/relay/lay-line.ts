import { applianceLoss_psi, defaultWorkingPressure_psi, elevation_psi, hoseCoefficient, parallelCoefficient, velocity_ftPerS } from '../hydraulics'
import { requireNotNegative, requirePositive, requireThat } from '../issue'
import type { GroundPoint, LaySegment } from './spec'

/**
 * The lay and its ground as lines between breakpoints: from one to the next friction and height go straight.
 *
 * `z` is the pressure that the height stands for, so that head, p + z + losses so far, changes in pumps only.
 */
export type LayLine = {
  readonly length_ft: number
  /** Breakpoints from the source on; the first at 0, the last at the end of the lay. */
  readonly x_ft: readonly number[]
  readonly height_ft: readonly number[]
  readonly z_psi: readonly number[]
  /** Friction so far at 1 gpm, [psi per gpm²]. */
  readonly resistance: readonly number[]
  /** Appliances so far, those at the breakpoint counted. */
  readonly fittingCounts: readonly number[]
  readonly masterCounts: readonly number[]
  /** Working pressure of the hose from each breakpoint to the next. */
  readonly working_psi: readonly number[]
  /** Bore and share of the flow of the line with the fastest water, from each breakpoint to the next. */
  readonly fastest: readonly { readonly size_in: number; readonly flowShare: number }[]
  /** Least of working pressure + z from each breakpoint to the end of the lay. */
  readonly ceiling_psi: readonly number[]
}

/**
 * Works out a lay once for all flows.
 *
 * @param lay     one segment or more, from the source on
 * @param profile ground by rising distance; level outside it
 * @throws RangeError if a length or coefficient is not positive, an appliance lies off its segment, or distances do not rise
 */
export function layLine(lay: readonly LaySegment[], profile: readonly GroundPoint[]): LayLine {
  requireThat(lay.length > 0, 'lay', '[]', 'one segment or more')
  profile.forEach(({ distance_ft }, i) => { requireThat(i === 0 || distance_ft > (profile[i - 1]?.distance_ft ?? 0), 'distance_ft', distance_ft, 'rising along the profile') })
  const starts: number[] = [], appliances: { at_ft: number; isMaster: boolean }[] = []
  let length_ft = 0
  for (const segment of lay) {
    requirePositive('length_ft', segment.length_ft)
    starts.push(length_ft)
    for (const { at_ft, kind } of segment.appliances ?? []) {
      requireNotNegative('at_ft', at_ft)
      requireThat(at_ft <= segment.length_ft, 'at_ft', at_ft, `within its segment of ${segment.length_ft} ft`)
      appliances.push({ at_ft: length_ft + at_ft, isMaster: kind === 'master-stream' })
    }
    length_ft += segment.length_ft
  }
  const inside = profile.map(({ distance_ft }) => distance_ft).filter((x) => x > 0 && x < length_ft)
  const x_ft = [...new Set([...starts, length_ft, ...inside, ...appliances.map(({ at_ft }) => at_ft)])].sort((a, b) => a - b)
  const height_ft = x_ft.map((x) => heightAt(profile, x))
  const z_psi = height_ft.map((height) => elevation_psi(height - (height_ft[0] ?? 0)))
  const segmentAt = x_ft.map((x) => lay[starts.findLastIndex((start) => start <= x)] ?? lay[0])
  const facts = new Map(lay.map((segment) => [segment, segmentFacts(segment)]))
  const factsAt = segmentAt.map((segment) => facts.get(segment ?? lay[0]!) ?? segmentFacts(lay[0]!))
  const resistance: number[] = [0]
  for (let i = 1; i < x_ft.length; i++) resistance.push((resistance[i - 1] ?? 0) + ((factsAt[i - 1]?.coefficient ?? 0) * ((x_ft[i] ?? 0) - (x_ft[i - 1] ?? 0))) / 1e6)
  const countTo = (x: number, isMaster: boolean) => appliances.filter((one) => one.isMaster === isMaster && one.at_ft <= x).length
  const working_psi = factsAt.map((fact) => fact.working_psi)
  const ceiling_psi = z_psi.map(() => Infinity)
  for (let i = x_ft.length - 1; i >= 0; i--) {
    const ends = i === x_ft.length - 1 ? z_psi[i] ?? 0 : Math.min(z_psi[i] ?? 0, z_psi[i + 1] ?? 0)
    ceiling_psi[i] = Math.min(ceiling_psi[i + 1] ?? Infinity, (working_psi[i] ?? 0) + ends)
  }
  return {
    length_ft, x_ft, height_ft, z_psi, resistance, working_psi, ceiling_psi, fastest: factsAt.map((fact) => fact.fastest),
    fittingCounts: x_ft.map((x) => countTo(x, false)), masterCounts: x_ft.map((x) => countTo(x, true)),
  }
}

function segmentFacts({ lines }: LaySegment) {
  requireThat(lines.length > 0, 'lines', '[]', 'one line or more')
  const each = lines.map(({ size_in, coefficient, working_psi }) => ({
    size_in, coefficient: coefficient ?? hoseCoefficient(size_in).coefficient, working_psi: working_psi ?? defaultWorkingPressure_psi(size_in),
  }))
  const coefficient = parallelCoefficient(each.map((line) => line.coefficient))
  const shared = each.map((line) => ({ size_in: line.size_in, flowShare: Math.sqrt(coefficient / line.coefficient) }))
  const speed = ({ size_in, flowShare }: { size_in: number; flowShare: number }) => velocity_ftPerS(flowShare, size_in)
  return { coefficient, working_psi: Math.min(...each.map((line) => line.working_psi)), fastest: shared.reduce((a, b) => (speed(b) > speed(a) ? b : a)) }
}

function heightAt(profile: readonly GroundPoint[], x: number): number {
  const after = profile.findIndex(({ distance_ft }) => distance_ft >= x)
  const high = profile[after], low = profile[after - 1]
  if (!high) return profile[profile.length - 1]?.height_ft ?? 0
  if (!low) return high.height_ft
  return low.height_ft + ((x - low.distance_ft) / (high.distance_ft - low.distance_ft)) * (high.height_ft - low.height_ft)
}

/** Losses in appliances at a flow, one of each kind. */
export type ApplianceLosses = { readonly fitting_psi: number; readonly master_psi: number }
/**
 * Loss of one appliance of each kind at a flow. [psi]
 *
 * @param flow_gpm 0 or more
 */
export const applianceLosses = (flow_gpm: number): ApplianceLosses => ({
  fitting_psi: applianceLoss_psi('fitting', flow_gpm), master_psi: applianceLoss_psi('master-stream', flow_gpm),
})

/** Number of the last breakpoint at or before a place; the last but one for the end. */
export function stretchAt({ x_ft }: LayLine, at_ft: number): number {
  let low = 0, high = x_ft.length - 2
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((x_ft[middle] ?? 0) <= at_ft) low = middle
    else high = middle - 1
  }
  return low
}

/** What the water meets at a place of the lay. */
export type LayPlace = {
  readonly height_ft: number
  readonly z_psi: number
  /** Friction and appliances from the source to here, those at the place counted. */
  readonly loss_psi: number
  /** Highest head without losses that keeps all hose from here to the end of the lay within its working pressure, water standing. */
  readonly ceiling_psi: number
  readonly working_psi: number
}

/** @param at_ft from 0 to the length of the lay */
export function placeOnLay(line: LayLine, at_ft: number, flow_gpm: number, losses = applianceLosses(flow_gpm)): LayPlace {
  const i = stretchAt(line, at_ft)
  const x0 = line.x_ft[i] ?? 0, x1 = line.x_ft[i + 1] ?? x0
  const share = x1 > x0 ? (at_ft - x0) / (x1 - x0) : 0
  const between = (list: readonly number[]) => (list[i] ?? 0) + share * ((list[i + 1] ?? 0) - (list[i] ?? 0))
  const counted = at_ft >= x1 ? i + 1 : i
  const z_psi = between(line.z_psi), working_psi = line.working_psi[i] ?? 0
  return {
    height_ft: between(line.height_ft), z_psi, working_psi,
    loss_psi: between(line.resistance) * flow_gpm ** 2 + (line.fittingCounts[counted] ?? 0) * losses.fitting_psi + (line.masterCounts[counted] ?? 0) * losses.master_psi,
    ceiling_psi: Math.min(working_psi + Math.min(z_psi, line.z_psi[i + 1] ?? 0), line.ceiling_psi[i + 1] ?? Infinity),
  }
}
