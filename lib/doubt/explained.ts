import { leastSquares } from './least-squares'

export type Explained = {
  /** By input: the part of the variance that it explains by itself, 0 to 1. */
  readonly shares: readonly number[]
  /** Standard error of each. */
  readonly errors: readonly number[]
  /** What no input explains by itself: single trips, inputs acting together, and what the curve misses. */
  readonly restShare: number
}

/** Inputs whose effect is also fitted as a curve. */
const CURVED_COUNT = 12
/** Nights a fitted number needs at least. */
const NIGHTS_PER_COLUMN = 3

/** Variance of a triangular draw on [−1, 1] about 0, and of its square. */
const LINE_VARIANCE = 1 / 6
const CURVE_VARIANCE = 1 / 15 - 1 / 36

/**
 * How much of the variance of a figure each input explains by itself.
 *
 *   y ≈ c + Σᵢ (aᵢ p₁(xᵢ) + bᵢ p₂(xᵢ)),   Sᵢ = (aᵢ² + bᵢ² − their squared standard errors) / (the sum of all these + residual variance)
 *
 * xᵢ is the input's factor laid on [−1, 1]; p₁ and p₂ are its line and its curve, orthonormal under the
 * triangular distribution, so that for independent inputs Sᵢ is the first-order Sobol' index as far as the fit
 * reaches. The line is fitted for all inputs, the curve for those with the strongest lines. Taking
 * the squared standard errors off keeps an input that does nothing at 0 on average.
 *
 * @param factors night, then input: factors between 1 − spread and 1 + spread
 * @param spreads of the inputs, above 0
 * @param values  one a night; nights that are not finite are left out
 * @returns undefined where nothing varies or there are too few nights for so many inputs
 * @source polynomial chaos expansion, Sudret, Global sensitivity analysis using polynomial chaos expansions (2008), from memory
 */
export function explainedShares(factors: Float64Array, spreads: readonly number[], values: ArrayLike<number>): Explained | undefined {
  const inputCount = spreads.length
  const nights = Array.from({ length: values.length }, (_, night) => night).filter((night) => Number.isFinite(values[night]!))
  if (nights.length < NIGHTS_PER_COLUMN * (inputCount + 1)) return undefined
  const y = Float64Array.from(nights, (night) => values[night]!)
  if (!varies(y)) return undefined

  const places = (input: number) => Float64Array.from(nights, (night) => (factors[night * inputCount + input]! - 1) / spreads[input]!)
  const lines = spreads.map((_, input) => places(input).map((x) => x / Math.sqrt(LINE_VARIANCE)))
  const one = new Float64Array(nights.length).fill(1)
  const straight = leastSquares([one, ...lines], y)
  const strength = (input: number) => Math.abs(straight.coefficients[input + 1]!)
  const room = Math.floor(nights.length / NIGHTS_PER_COLUMN) - 1 - inputCount
  const curved = spreads.map((_, input) => input).sort((a, b) => strength(b) - strength(a)).slice(0, Math.max(0, Math.min(CURVED_COUNT, room)))
  const curves = curved.map((input) => places(input).map((x) => (x * x - LINE_VARIANCE) / Math.sqrt(CURVE_VARIANCE)))
  const fit = leastSquares([one, ...lines, ...curves], y)

  const squares = new Float64Array(inputCount)
  const errors = new Float64Array(inputCount)
  const add = (input: number, column: number): void => {
    const [coefficient, error2] = [fit.coefficients[column]!, fit.variances[column]!]
    squares[input] = squares[input]! + coefficient * coefficient - error2
    errors[input] = errors[input]! + 4 * coefficient * coefficient * error2 + 2 * error2 * error2
  }
  spreads.forEach((_, input) => add(input, input + 1))
  curved.forEach((input, index) => add(input, inputCount + 1 + index))
  const whole = squares.reduce((sum, square) => sum + square, 0) + fit.residualVariance
  return {
    shares: Array.from(squares, (square) => Math.min(1, Math.max(0, square / whole))),
    errors: Array.from(errors, (error2) => Math.sqrt(error2) / whole),
    restShare: Math.min(1, fit.residualVariance / whole),
  }
}

function varies(values: Float64Array): boolean {
  const first = values[0]!
  return values.some((value) => Math.abs(value - first) > 1e-9 * Math.max(1, Math.abs(first)))
}
