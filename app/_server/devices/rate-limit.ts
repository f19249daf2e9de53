/** Counts tries in a sliding window, for each who tries and for all together. */
export class RateLimit {
  readonly #tries = new Map<string, number[]>()

  /**
   * @param most      tries of one within the window
   * @param mostOfAll tries of all together within the window
   * @param now       clock, milliseconds
   */
  constructor(
    readonly most: number,
    readonly mostOfAll: number,
    readonly window_ms: number,
    readonly now: () => number = Date.now,
  ) {}

  /** Counts one more try; false if it is one too many. A refused try does not count again, so waiting helps. */
  take(who: string): boolean {
    const since = this.now() - this.window_ms
    let all = 0
    for (const [key, times] of this.#tries) {
      const recent = times.filter((time) => time > since)
      if (recent.length > 0) this.#tries.set(key, recent)
      else this.#tries.delete(key)
      all += recent.length
    }
    const own = this.#tries.get(who) ?? []
    if (own.length >= this.most || all >= this.mostOfAll) return false
    this.#tries.set(who, [...own, this.now()])
    return true
  }

  /** Forgets the tries of one: it has shown that it belongs here. */
  clear(who: string): void {
    this.#tries.delete(who)
  }
}
