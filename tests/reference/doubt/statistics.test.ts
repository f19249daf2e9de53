import { describe, expect, it } from 'vitest'
import { quantile, shareError } from '@/lib/doubt'
import { leastSquares } from '@/lib/doubt/least-squares'
import { triangular, uniform } from '@/lib/random'
import { Given, isWithin, readCases, type ReferenceCase } from '../reference-case'

const DRAWS = 60_000

function draws(given: Given): Float64Array {
  const [low, mode, high] = [given.number('low'), given.number('mode'), given.number('high')]
  return Float64Array.from({ length: DRAWS }, (_, count) => triangular(uniform(11, 3, 5, count), low, mode, high))
}

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length

function fitOf(given: Given) {
  const x = Float64Array.from(given.numbers('x'))
  return leastSquares([new Float64Array(x.length).fill(1), x], Float64Array.from(given.numbers('y')))
}

const laws: Readonly<Record<string, (given: Given) => number>> = {
  shareError: (given) => shareError(given.number('share'), given.number('count')),
  quantile: (given) => quantile(given.numbers('values'), given.number('share')),
  triangularAt: (given) => triangular(given.number('u'), given.number('low'), given.number('mode'), given.number('high')),
  triangularMean: (given) => mean(draws(given)),
  triangularVariance: (given) => {
    const values = draws(given)
    const middle = mean(values)
    return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1)
  },
  fittedSlope: (given) => fitOf(given).coefficients[1]!,
  fittedStart: (given) => fitOf(given).coefficients[0]!,
  fittedSlopeError: (given) => Math.sqrt(fitOf(given).variances[1]!),
}

describe('statistics agree with textbooks and published data', () => {
  const oursOf = (aCase: ReferenceCase): number => {
    const law = laws[aCase.law]
    if (!law) throw new Error(`no law ${aCase.law}`)
    return law(new Given(aCase))
  }
  it.each(readCases('doubt/statistics.json').cases)('$law: $name', (aCase) => {
    const ours = oursOf(aCase)
    expect(isWithin(aCase, ours), `ours ${ours}, theirs ${aCase.expected}`).toBe(true)
  })
})
