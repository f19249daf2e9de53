import { describe, expect, it } from 'vitest'
import { explainedShares } from '@/lib/doubt'
import { triangular, uniform } from '@/lib/random'

/**
 * Variance shares of functions whose shares can be written down: first-order Sobol' indices of a sum, a square
 * and a product of independent inputs (any textbook of sensitivity analysis). Inputs are triangular on
 * [−1, 1], so their variance v is 1/6 and that of their square 7/180.
 */
const NIGHTS = 3000
const INPUTS = 6
const SPREAD = 0.4
const spreads = Array<number>(INPUTS).fill(SPREAD)
const factors = Float64Array.from({ length: NIGHTS * INPUTS }, (_, at) => triangular(uniform(1, at % INPUTS, 1, Math.floor(at / INPUTS)), 1 - SPREAD, 1, 1 + SPREAD))
const v = 1 / 6

function sharesOf(of: (x: readonly number[], night: number) => number) {
  const values = Float64Array.from({ length: NIGHTS }, (_, night) => of(spreads.map((spread, input) => (factors[night * INPUTS + input]! - 1) / spread), night))
  const explained = explainedShares(factors, spreads, values)
  if (!explained) throw new Error('the values vary')
  return explained
}

/** Four standard errors that the method itself states, and never less than a hundredth. */
function expectShares({ shares, errors, restShare }: ReturnType<typeof sharesOf>, expected: readonly number[], rest: number): void {
  expected.forEach((share, input) => expect(Math.abs(shares[input]! - share)).toBeLessThan(Math.max(0.01, 4 * errors[input]!)))
  // Sums of squares of a sample scatter around those of the distribution.
  expect(Math.abs(restShare - rest)).toBeLessThan(0.03)
}

describe('variance shares', () => {
  it('of a weighted sum are its squared weights over their sum', () => {
    const sum2 = 2 ** 2 + 1 + 0.5 ** 2
    expectShares(sharesOf(([a = 0, b = 0, c = 0]) => 100 + 2 * a + b - 0.5 * c), [4 / sum2, 1 / sum2, 0.25 / sum2, 0, 0, 0], 0)
  })

  it('of a sum with noise leave the noise to the rest', () => {
    // Uniform noise on [−1, 1]: variance 1/3, twice that of the one input.
    const explained = sharesOf(([a = 0], night) => 5 + a + 2 * uniform(9, 9, 9, night) - 1)
    expectShares(explained, [1 / 3, 0, 0, 0, 0, 0], 2 / 3)
  })

  it('of a square are found though its line explains nothing', () => {
    const square = 7 / 180
    expectShares(sharesOf(([a = 0, b = 0]) => a * a + 0.5 * b), [square / (square + v / 4), (v / 4) / (square + v / 4), 0, 0, 0, 0], 0)
  })

  it('of a product leave what only both together do to the rest', () => {
    // (1 + a)(1 + b): variance 2v + v², v for each alone.
    const whole = 2 * v + v * v
    expectShares(sharesOf(([a = 0, b = 0]) => (1 + a) * (1 + b)), [v / whole, v / whole, 0, 0, 0, 0], (v * v) / whole)
  })

  it('of what never varies are not made up', () => {
    expect(explainedShares(factors, spreads, new Float64Array(NIGHTS).fill(500))).toBeUndefined()
  })

  it('of fewer nights than the fit needs are not made up', () => {
    expect(explainedShares(factors.slice(0, 15 * INPUTS), spreads, Float64Array.from({ length: 15 }, (_, night) => night))).toBeUndefined()
  })
})
