const ABSENT = -1

/**
 * A queue of numbered states, smallest key first, in typed arrays; a state's key can be
 * lowered in place. Four children a parent: fewer cache misses than two.
 */
export class StateHeap {
  size = 0
  private readonly state: Int32Array
  private readonly key: Float64Array
  private readonly placeOf: Int32Array

  /** @param stateCount states are 0 … stateCount − 1 */
  constructor(stateCount: number) {
    this.state = new Int32Array(stateCount)
    this.key = new Float64Array(stateCount)
    this.placeOf = new Int32Array(stateCount).fill(ABSENT)
  }

  /** Smallest key; Infinity when empty. */
  get smallestKey(): number {
    return this.size > 0 ? this.key[0]! : Infinity
  }

  /** Puts a state in, or lowers its key. A key that is not lower changes nothing. */
  put(state: number, key: number): void {
    let place = this.placeOf[state]!
    if (place === ABSENT) place = this.size++
    else if (key >= this.key[place]!) return
    while (place > 0) {
      const parent = (place - 1) >> 2
      const parentKey = this.key[parent]!
      if (key >= parentKey) break
      this.move(this.state[parent]!, parentKey, place)
      place = parent
    }
    this.move(state, key, place)
  }

  /** Takes out the state with the smallest key; −1 when empty. */
  take(): number {
    if (this.size === 0) return ABSENT
    const first = this.state[0]!
    this.placeOf[first] = ABSENT
    const last = --this.size
    if (last > 0) this.sink(this.state[last]!, this.key[last]!)
    return first
  }

  clear(): void {
    for (let i = 0; i < this.size; i++) this.placeOf[this.state[i]!] = ABSENT
    this.size = 0
  }

  private sink(state: number, key: number): void {
    let place = 0
    for (;;) {
      const firstChild = 4 * place + 1
      if (firstChild >= this.size) break
      const end = Math.min(firstChild + 4, this.size)
      let child = firstChild
      for (let i = firstChild + 1; i < end; i++) if (this.key[i]! < this.key[child]!) child = i
      if (this.key[child]! >= key) break
      this.move(this.state[child]!, this.key[child]!, place)
      place = child
    }
    this.move(state, key, place)
  }

  private move(state: number, key: number, place: number): void {
    this.state[place] = state
    this.key[place] = key
    this.placeOf[state] = place
  }
}
