import { NIGHT_COUNT, SEED, type DoubtAnswer, type DoubtModel } from '@/lib/doubt'
import type { Bundle } from '@/lib/plan'
import type { DoubtService } from './doubt-service'

export type DoubtJob = {
  readonly signal: AbortSignal
  /** Part of the nights done, 0 to 1. */
  readonly onProgress?: (share: number) => void
}

/** Nights in one message: few enough to stop soon, many enough that messages cost nothing. */
const CHUNK = 10

const keyOf = ({ district, plan, legs }: Bundle): string => JSON.stringify([district, plan, legs])

/**
 * Several workers on the nights of one plan. Jobs come one after the other; a job that is stopped
 * gives undefined and leaves at most one message of each worker behind. Before every message the pool waits
 * until nobody types, so that the page's own answer goes first.
 */
export class DoubtPool {
  readonly #ports: readonly DoubtService[]
  readonly #untilQuiet: () => Promise<void>
  readonly #nightCount: number
  #last: Promise<unknown> = Promise.resolve()
  #model: { key: string; model: DoubtModel | undefined } | undefined
  #whole: { key: string; answer: DoubtAnswer } | undefined

  /** @param ports one or more workers */
  constructor(ports: readonly DoubtService[], untilQuiet: () => Promise<void>, nightCount = NIGHT_COUNT) {
    this.#ports = ports
    this.#untilQuiet = untilQuiet
    this.#nightCount = nightCount
  }

  /** Everything: dependable flow, bands, chances, what explains the doubt. Asked again for the same plan it is at hand. */
  whole(bundle: Bundle, job: DoubtJob): Promise<DoubtAnswer | undefined> {
    return this.#inTurn(bundle, job, async (key) => {
      if (this.#whole?.key === key) return this.#whole.answer
      if (!(await this.#prepare(key, bundle, job))) return undefined
      const samples: Awaited<ReturnType<DoubtService['sample']>>[] = []
      const isDone = await this.#share(job, async (port, from, count) => { samples.push(await port.sample(SEED, from, count)) })
      const [first] = this.#ports
      if (!isDone || !first) return undefined
      this.#whole = { key, answer: await first.sum(samples, SEED) }
      return this.#whole.answer
    })
  }

  /** What `whole` found last, where it is of this very plan: at hand without a wait. */
  kept(bundle: Bundle): DoubtAnswer | undefined {
    return this.#whole?.key === keyOf(bundle) ? this.#whole.answer : undefined
  }

  #inTurn<T>(bundle: Bundle, { signal }: DoubtJob, work: (key: string) => Promise<T | undefined>): Promise<T | undefined> {
    const mine = this.#last.then(() => (signal.aborted ? undefined : work(keyOf(bundle))))
    this.#last = mine.catch(() => undefined)
    return mine
  }

  /** One worker compiles, all take what it made. @returns false when there is nothing to doubt or the job is stopped */
  async #prepare(key: string, bundle: Bundle, { signal }: DoubtJob): Promise<boolean> {
    if (this.#model?.key !== key) {
      await this.#untilQuiet()
      if (signal.aborted) return false
      const model = await this.#ports[0]?.prepare(bundle)
      if (model) await Promise.all(this.#ports.map((port) => port.take(model)))
      this.#model = { key, model }
    }
    return this.#model.model !== undefined && !signal.aborted
  }

  /** @returns false when the job was stopped */
  async #share({ signal, onProgress }: DoubtJob, call: (port: DoubtService, from: number, count: number) => Promise<void>): Promise<boolean> {
    let next = 0
    let done = 0
    await Promise.all(this.#ports.map(async (port) => {
      for (;;) {
        await this.#untilQuiet()
        if (signal.aborted || next >= this.#nightCount) return
        const from = next
        const count = Math.min(CHUNK, this.#nightCount - from)
        next += count
        await call(port, from, count)
        done += count
        if (!signal.aborted) onProgress?.(done / this.#nightCount)
      }
    }))
    return !signal.aborted
  }
}
