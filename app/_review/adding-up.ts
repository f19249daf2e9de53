/**
 * Whole numbers nearest to some values that add up to the whole number nearest to their sum: those that lie furthest below their values go
 * up first. A reader who adds them finds the total shown.
 */
export function addingUp(values: readonly number[]): number[] {
  const total = Math.round(values.reduce((sum, value) => sum + value, 0))
  const down = values.map(Math.floor)
  const missing = total - down.reduce((sum, value) => sum + value, 0)
  const order = values.map((value, k) => ({ k, rest: value - Math.floor(value) })).sort((a, b) => b.rest - a.rest || a.k - b.k)
  const raised = new Set(order.slice(0, missing).map(({ k }) => k))
  return down.map((value, k) => (raised.has(k) ? value + 1 : value) + 0)
}
