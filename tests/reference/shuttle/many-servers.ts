/** A place where customers are served one a server, first come first served, exponential times. */
export type Station = { readonly service: number; readonly serverCount: number }

export type NetworkMeans = {
  /** Rounds a unit of time, all customers together. */
  throughput: number
  /** Mean wait before service at each station, one visit. */
  wait: number[]
  /** Mean customers at each station, in service too. */
  queue: number[]
}

/**
 * Exact mean value analysis of a closed network whose stations may have several servers; one visit each a round, and a delay.
 *
 *   R_i(n) = Σ j / μ_i(j) · p_i(j − 1 | n − 1),  μ_i(j) = min(j, c_i) / S_i,  X(n) = n / (Z + Σ R_i),
 *   p_i(j | n) = X(n) / μ_i(j) · p_i(j − 1 | n − 1),  p_i(0 | n) = 1 − Σ p_i(j | n)
 *
 * With one server everywhere it is the plain form of `meanValues`.
 *
 * @param delay Z, the same unit of time as the services; any distribution
 * @source load-dependent mean value analysis, Reiser and Lavenberg 1980 (from memory); checked here against the
 *   product form summed outright and, for one server, against the published figures of `meanValues`
 */
export function networkMeans(stations: readonly Station[], delay: number, customers: number): NetworkMeans {
  const rate = ({ service, serverCount }: Station, present: number) => Math.min(present, serverCount) / service
  let share = stations.map(() => [1])
  let residence = stations.map(() => 0)
  let throughput = 0
  for (let n = 1; n <= customers; n++) {
    residence = stations.map((station, i) => share[i]!.reduce((sum, p, before) => sum + ((before + 1) / rate(station, before + 1)) * p, 0))
    throughput = n / (delay + residence.reduce((sum, r) => sum + r, 0))
    share = stations.map((station, i) => {
      const some = share[i]!.map((p, before) => (throughput / rate(station, before + 1)) * p)
      return [1 - some.reduce((sum, p) => sum + p, 0), ...some]
    })
  }
  return { throughput, wait: residence.map((r, i) => r - stations[i]!.service), queue: residence.map((r) => r * throughput) }
}

/**
 * The same throughput from the product form, every state of the network added up: a second way to it.
 *
 *   G(n) = Σ over states  Π_i S_i^k_i / Π_{j ≤ k_i} min(j, c_i) · Z^k_0 / k_0!,  X = G(N − 1) / G(N)
 *
 * @source product form of closed networks (Gordon and Newell 1967, from memory)
 */
export function productFormThroughput(stations: readonly Station[], delay: number, customers: number): number {
  const weights = [...stations, { service: delay, serverCount: Infinity }].map(({ service, serverCount }) => {
    const list = [1]
    for (let j = 1; j <= customers; j++) list.push((list[j - 1]! * service) / Math.min(j, serverCount))
    return list
  })
  const sums = weights.reduce<number[]>((known, list) => known.map((_, n) => known.slice(0, n + 1).reduce((sum, g, k) => sum + g * list[n - k]!, 0)), [1, ...Array<number>(customers).fill(0)])
  return sums[customers - 1]! / sums[customers]!
}
