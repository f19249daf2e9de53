import type { SupplyResult } from './result'

/**
 * How many of an answer's inputs nobody has measured, and how many of those are a mere assumption. The one count, for every
 * screen, the terminal and whoever reads the result: an input is a number of one item that the answer took, once however
 * often it is used; a default that several items fall back on counts for each of them.
 */
export const countUnmeasured = ({ unmeasured }: Pick<SupplyResult, 'unmeasured'>): { readonly all: number; readonly assumed: number } =>
  ({ all: unmeasured.length, assumed: unmeasured.filter(({ mark }) => mark === 'assumed').length })
