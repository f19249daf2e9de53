import type { Unit } from '@/lib/units'
import type { UnitSystem } from './unit-system'

/** Decimals by size: the first row whose bound the shown value is below. */
type Decimals = readonly (readonly [below: number, decimals: number])[]

const whole: Decimals = [[Infinity, 0]]
const oneWhenSmall: Decimals = [[10, 1], [Infinity, 0]]

const usDecimals: Readonly<Record<Unit, Decimals>> = {
  gal: oneWhenSmall,
  gpm: oneWhenSmall,
  psi: oneWhenSmall,
  ft: [[100, 1], [Infinity, 0]],
  in: [[10, 2], [Infinity, 1]],
  mi: [[10, 2], [Infinity, 1]],
  mph: whole,
  lb: whole,
  inHg: [[Infinity, 1]],
  degF: whole,
  s: whole,
  sqft: whole,
  cuft: oneWhenSmall,
}

const metricDecimals: Readonly<Record<Unit, Decimals>> = {
  gal: oneWhenSmall,
  gpm: oneWhenSmall,
  psi: oneWhenSmall,
  ft: [[10, 2], [100, 1], [Infinity, 0]],
  in: whole,
  mi: [[10, 2], [Infinity, 1]],
  mph: whole,
  lb: whole,
  inHg: oneWhenSmall,
  degF: [[Infinity, 1]],
  s: whole,
  sqft: oneWhenSmall,
  cuft: [[10, 2], [100, 1], [Infinity, 0]],
}

/** Decimals that a shown value keeps. Chosen so that the last one is about what an officer can measure. */
export function decimalsFor(shown: number, unit: Unit, system: UnitSystem): number {
  if (system === 'metric-bar' && unit === 'psi') return Math.abs(shown) < 1 ? 2 : 1
  const rows = (system === 'us' ? usDecimals : metricDecimals)[unit]
  return rows.find(([below]) => Math.abs(shown) < below)?.[1] ?? 0
}

/** Steps by size: the first row whose bound the shown value is below. */
type Steps = readonly (readonly [below: number, step: number])[]

/**
 * A flow is known to a few in a hundred at best (queues alone shift it by 2 to 3 %, lib/shuttle/README.md), and no
 * gauge reads to 1 gpm: 5 gpm is 1 % of 500. Below 20 gpm, where 5 would swallow a spring whole, it is 1.
 */
const usFlowSteps: Steps = [[20, 1], [1000, 5], [Infinity, 10]]
const metricFlowSteps: Steps = [[80, 5], [4000, 20], [Infinity, 50]]
const usVolumeSteps: Steps = [[1000, 10], [Infinity, 100]]
/** A litre is a quarter of a gallon: three significant figures are fine enough, and a hundred litres too much of a small tank. */
const metricVolumeSteps: Steps = [[Infinity, 10]]

/**
 * A flow asked for in metric units goes up to 10 L/min unless it is whole litres, as typed: 500 gpm is 1,892.7 L/min, and no more known to
 * the litre than to the tenth of it.
 */
const METRIC_ASKED_STEP = 10
const isWhole = (shown: number): boolean => Math.abs(shown - Math.round(shown)) < 1e-6

/** Whatever its size, what is worked out from a surface on a map or a float on a stream is known to no more than this. */
const SIGNIFICANT_DIGITS = 3
const significantStep = (shown: number): number => 10 ** (Math.floor(Math.log10(Math.max(1, Math.abs(shown)))) - SIGNIFICANT_DIGITS + 1)

/**
 * Step of a headline figure, in the unit shown; undefined where the plain decimals do. Never finer than three
 * significant figures. A flow that is asked for
 * (rounded up) keeps its whole gpm or L/min, so that one that was typed is shown as it was typed.
 */
export function findHeadlineStep(shown: number, unit: Unit, system: UnitSystem, toward: Toward = 'nearest'): number | undefined {
  if (unit === 'gpm' && toward === 'up') return system === 'us' || isWhole(shown) ? 1 : METRIC_ASKED_STEP
  const steps = unit === 'gal' ? (system === 'us' ? usVolumeSteps : metricVolumeSteps) : unit !== 'gpm' ? undefined : system === 'us' ? usFlowSteps : metricFlowSteps
  const step = steps?.find(([below]) => Math.abs(shown) < below)?.[1]
  return step === undefined ? undefined : Math.max(step, significantStep(shown))
}

export type Toward = 'nearest' | 'down' | 'up'

/**
 * Rounds to a step. A hair of binary noise (a billionth of a step) never costs a whole step.
 */
export function roundTo(value: number, step: number, toward: Toward = 'nearest'): number {
  const steps = value / step
  const noise = 1e-9 * Math.max(1, Math.abs(steps))
  if (toward === 'down') return Math.floor(steps + noise) * step
  if (toward === 'up') return Math.ceil(steps - noise) * step
  return Math.round(steps) * step
}
