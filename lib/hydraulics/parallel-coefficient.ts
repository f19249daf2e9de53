import { requirePositive, requireThat } from '../issue'

/**
 * One coefficient for lines laid side by side between the same two points, equal in length.
 *
 *   1/√C = Σ 1/√Cᵢ
 *
 * @param coefficients of each line, above 0, at least one
 * @returns C of them together
 * @throws RangeError if empty or not positive
 * @source calc; equals the handbook's siamese table (memory, high), tests/reference/hose-friction.json
 */
export function parallelCoefficient(coefficients: readonly number[]): number {
  requireThat(coefficients.length > 0, 'coefficients', '[]', 'at least one')
  let sum = 0
  for (const coefficient of coefficients) {
    requirePositive('coefficient', coefficient)
    sum += 1 / Math.sqrt(coefficient)
  }
  return 1 / sum ** 2
}
