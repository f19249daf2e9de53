/**
 * Exact mean value analysis of a closed network of single servers and a delay.
 *
 *   R_i(n) = D_i · (1 + Q_i(n − 1)),  X(n) = n / (Z + Σ R_i),  Q_i = X · R_i
 *
 * @param demands service demand of each station, any unit of time
 * @param delay   Z, the same unit
 * @source Performance by Design: Computer Capacity Planning by Example, Prentice Hall 2004, 12.2–12.3, table 12.5
 */
export function meanValues(demands: readonly number[], delay: number, customers: number): { throughput: number; residence: number[]; queue: number[] } {
  let queue = demands.map(() => 0)
  let residence = demands.map(() => 0)
  let throughput = 0
  for (let n = 1; n <= customers; n++) {
    residence = demands.map((demand, i) => demand * (1 + queue[i]!))
    throughput = n / (delay + residence.reduce((sum, r) => sum + r, 0))
    queue = residence.map((r) => throughput * r)
  }
  return { throughput, residence, queue }
}

/**
 * Single server with a finite source of customers, exponential times (machine repair).
 *
 *   Pn = N! / (N − n)! · (λ/μ)^n · P0,  Lq = N − (λ + μ)/λ · (1 − P0),  L = Lq + 1 − P0,
 *   Wq = Lq / ((N − L) λ),  W = Wq + 1/μ
 *
 * @source An Introduction to Management Science, finite calling population, p. 477, eqs 11.35–11.39; P0 and Lq from memory
 */
export function machineRepair(customers: number, arrivalRate: number, serviceRate: number) {
  const terms = [1]
  for (let n = 1; n <= customers; n++) terms.push((terms[n - 1]! * (customers - n + 1) * arrivalRate) / serviceRate)
  const p0 = 1 / terms.reduce((sum, term) => sum + term, 0)
  const lq = customers - ((arrivalRate + serviceRate) / arrivalRate) * (1 - p0)
  const l = lq + 1 - p0
  const wq = lq / ((customers - l) * arrivalRate)
  return { p: terms.map((term) => term * p0), lq, l, wq, w: wq + 1 / serviceRate }
}
