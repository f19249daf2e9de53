/** Keeps the values used last, and lets go of those not used for longest. */
export class RecentMap<V> {
  readonly #most: number
  readonly #values = new Map<string, V>()

  /** @param most how many are kept, 1 or more */
  constructor(most: number) {
    this.#most = most
  }

  find(key: string): V | undefined {
    const value = this.#values.get(key)
    if (value !== undefined) this.put(key, value)
    return value
  }

  put(key: string, value: V): void {
    this.#values.delete(key)
    this.#values.set(key, value)
    const [oldest] = this.#values.keys()
    if (this.#values.size > this.#most && oldest !== undefined) this.#values.delete(oldest)
  }

  getOrMake(key: string, make: () => V): V {
    const known = this.find(key)
    if (known !== undefined) return known
    const made = make()
    this.put(key, made)
    return made
  }
}
