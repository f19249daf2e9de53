import type { SeatAct } from './seat-messages'

/** What the station said to an act: taken, not now (it is sent again), or no, and why. */
export type ActAnswer = { kind: 'taken' } | { kind: 'later' } | { kind: 'refused'; sentence: string }

export type Waiting = { readonly act: SeatAct; readonly madeAt_ms: number }
/** `isKept`: what waits is on this device, not in this window alone. */
export type OutboxState = { readonly waiting: readonly Waiting[]; readonly refused: readonly { readonly act: SeatAct; readonly sentence: string }[]; readonly isKept: boolean }

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

const PAUSES_ms = [500, 1000, 2000, 5000] as const

/**
 * What was decided and noted at a seat and is not at the station yet. It is written down on this device before it is
 * sent, sent in order and again until the station answers, and its id makes twice the same as once. Each act lies under
 * a key of its own, so that two windows of one seat never write over one another.
 */
export class ActOutbox {
  #state: OutboxState
  #isSending = false
  #failures = 0
  #timer: ReturnType<typeof setTimeout> | undefined
  readonly #listeners = new Set<() => void>()

  constructor(readonly key: string, readonly store: Store | undefined, readonly send: (act: SeatAct) => Promise<ActAnswer>, readonly now: () => number = Date.now, readonly pauses_ms: readonly number[] = PAUSES_ms) {
    this.#state = { waiting: this.#read(), refused: [], isKept: true }
  }

  state = (): OutboxState => this.#state
  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  add(act: SeatAct): void {
    this.#become({ ...this.#state, waiting: [...this.#state.waiting, { act, madeAt_ms: this.now() }] })
    void this.flush()
  }

  dismiss(id: string): void {
    this.#become({ ...this.#state, refused: this.#state.refused.filter(({ act }) => act.id !== id) })
  }

  /** Sends what waits, now. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer)
    if (this.#isSending) return
    this.#isSending = true
    try {
      for (let next = this.#state.waiting[0]; next; next = this.#state.waiting[0]) {
        const { act } = next
        const answer = await this.send(act).catch((): ActAnswer => ({ kind: 'later' }))
        if (answer.kind === 'later') {
          this.#timer = setTimeout(() => void this.flush(), this.pauses_ms[Math.min(this.#failures, this.pauses_ms.length - 1)])
          this.#failures += 1
          return
        }
        this.#failures = 0
        const waiting = this.#state.waiting.filter((one) => one.act.id !== act.id)
        this.#become({ ...this.#state, waiting, refused: answer.kind === 'refused' ? [...this.#state.refused, { act, sentence: answer.sentence }] : this.#state.refused })
      }
    } finally {
      this.#isSending = false
    }
  }

  /** Sends nothing more by itself; what waits stays on the device. */
  stop(): void {
    clearTimeout(this.#timer)
  }

  #read(): Waiting[] {
    try {
      const keys = Array.from({ length: this.store?.length ?? 0 }, (_, i) => this.store?.key(i) ?? '').filter((key) => key.startsWith(`${this.key}:`))
      return keys.map((key) => JSON.parse(this.store?.getItem(key) ?? '') as Waiting).sort((a, b) => a.madeAt_ms - b.madeAt_ms)
    } catch {
      return []
    }
  }

  #become(state: OutboxState): void {
    const [before, after] = [this.#state.waiting, state.waiting]
    let isKept = this.store !== undefined || after.length === 0
    try {
      for (const one of after) if (!before.includes(one)) this.store?.setItem(`${this.key}:${one.act.id}`, JSON.stringify(one))
      for (const one of before) if (!after.includes(one)) this.store?.removeItem(`${this.key}:${one.act.id}`)
    } catch {
      // A full or closed store: the window still holds it, and says that only the window does.
      isKept = false
    }
    this.#state = { ...state, isKept }
    for (const listener of this.#listeners) listener()
  }
}
