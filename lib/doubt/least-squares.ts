import { requireThat } from '../issue'

export type Fit = {
  /** One a column. */
  readonly coefficients: Float64Array
  /** Squared standard error of each. */
  readonly variances: Float64Array
  /** Variance of what the columns leave over. */
  readonly residualVariance: number
}

/**
 * Ordinary least squares by the normal equations and a Cholesky factor: enough for columns that are
 * nearly orthogonal, as independent draws are.
 *
 *   (XᵀX) b = Xᵀy,  variance of b = residual variance · diagonal of (XᵀX)⁻¹
 *
 * @param columns each as long as `values`, none a sum of the others
 * @throws RangeError with no more values than columns, or columns that depend on each other
 * @source any textbook of statistics
 */
export function leastSquares(columns: readonly Float64Array[], values: Float64Array): Fit {
  const p = columns.length
  const n = values.length
  requireThat(n > p, 'values.length', n, `more than the ${p} columns`)
  const factor = new Float64Array(p * p)
  const right = new Float64Array(p)
  for (let i = 0; i < p; i++) {
    for (let j = 0; j <= i; j++) factor[i * p + j] = dot(columns[i]!, columns[j]!)
    right[i] = dot(columns[i]!, values)
  }
  decompose(factor, p)
  const coefficients = solve(factor, p, right)
  let left = 0
  for (let k = 0; k < n; k++) {
    let fitted = 0
    for (let i = 0; i < p; i++) fitted += coefficients[i]! * columns[i]![k]!
    left += (values[k]! - fitted) ** 2
  }
  const residualVariance = left / (n - p)
  const variances = Float64Array.from(coefficients, (_, i) => {
    const unit = new Float64Array(p)
    unit[i] = 1
    return residualVariance * solve(factor, p, unit)[i]!
  })
  return { coefficients, variances, residualVariance }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}

/** Lower Cholesky factor in place. */
function decompose(matrix: Float64Array, p: number): void {
  for (let i = 0; i < p; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * p + j]!
      for (let k = 0; k < j; k++) sum -= matrix[i * p + k]! * matrix[j * p + k]!
      if (i !== j) matrix[i * p + j] = sum / matrix[j * p + j]!
      else {
        requireThat(sum > 1e-12 * matrix[i * p + i]!, 'columns', `column ${i}`, 'independent of those before it')
        matrix[i * p + i] = Math.sqrt(sum)
      }
    }
  }
}

function solve(factor: Float64Array, p: number, right: Float64Array): Float64Array {
  const x = Float64Array.from(right)
  for (let i = 0; i < p; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - factor[i * p + k]! * x[k]!
    x[i] = x[i]! / factor[i * p + i]!
  }
  for (let i = p - 1; i >= 0; i--) {
    for (let k = i + 1; k < p; k++) x[i] = x[i]! - factor[k * p + i]! * x[k]!
    x[i] = x[i]! / factor[i * p + i]!
  }
  return x
}
