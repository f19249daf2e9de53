import { EventReader, type StreamEvent } from './event-text'

/** How a stream stands: being told what is new, up to date, silent, or not to be had. */
export type LiveState =
  | { readonly kind: 'catching-up' }
  | { readonly kind: 'live' }
  /** `heardAt_ms`: when something was last heard, by this device's clock; absent: never */
  | { readonly kind: 'cut-off'; readonly heardAt_ms?: number }
  /** The server said no, and why: it is not asked again. */
  | { readonly kind: 'refused'; readonly status: number }

export type LiveStreamOptions = {
  url: string
  /** `ready` makes it live; a `false` that comes back asks for all after the last number anew */
  onEvent(event: StreamEvent): boolean | void
  onState(state: LiveState): void
  /** Number of the last news that is here, as the server wrote it. */
  lastId(): string | undefined
  fetcher?: typeof fetch
  /** Waiting, as something a test can shorten. */
  pauses_ms?: readonly number[]
  silence_ms?: number
}

/** Beats come every ten seconds: three that did not come are a connection that is gone, though nobody said so. */
const SILENCE_ms = 31_000
/** Pauses between tries, the last again and again: at a table nobody waits long. */
const PAUSES_ms = [300, 1000, 2000, 4000] as const
/** Answers that will be the same next time. */
const FINAL = [401, 403, 404, 410]

/** A stream of events that is taken up again by itself wherever it breaks off, from the last number on. */
export class LiveStream {
  readonly #options: Required<LiveStreamOptions>
  #isOn = false
  #failures = 0
  #heardAt_ms: number | undefined
  #abort: AbortController | undefined
  #wake: (() => void) | undefined

  constructor(options: LiveStreamOptions) {
    this.#options = { fetcher: (input, init) => fetch(input, init), pauses_ms: PAUSES_ms, silence_ms: SILENCE_ms, ...options }
  }

  start(): void {
    if (this.#isOn) return
    this.#isOn = true
    this.#options.onState({ kind: 'catching-up' })
    void this.#run()
  }

  stop(): void {
    this.#isOn = false
    this.#abort?.abort()
    this.#wake?.()
  }

  /** The network may be back: does not wait for the next try. */
  nudge(): void {
    this.#wake?.()
  }

  async #run(): Promise<void> {
    while (this.#isOn) {
      const status = await this.#listen().catch(() => 0)
      if (!this.#isOn) return
      if (FINAL.includes(status)) {
        this.#isOn = false
        return this.#options.onState({ kind: 'refused', status })
      }
      this.#options.onState({ kind: 'cut-off', ...(this.#heardAt_ms !== undefined && { heardAt_ms: this.#heardAt_ms }) })
      const { pauses_ms } = this.#options
      await this.#pause(pauses_ms[Math.min(this.#failures, pauses_ms.length - 1)] ?? 0)
      this.#failures += 1
    }
  }

  /** One connection, to its end. @returns the status of an answer that was no stream, or 0 */
  async #listen(): Promise<number> {
    const abort = (this.#abort = new AbortController())
    let watchdog = setTimeout(() => { abort.abort() }, this.#options.silence_ms)
    const heard = () => {
      this.#heardAt_ms = Date.now()
      clearTimeout(watchdog)
      watchdog = setTimeout(() => { abort.abort() }, this.#options.silence_ms)
    }
    try {
      const lastId = this.#options.lastId()
      const response = await this.#options.fetcher(this.#options.url, { headers: { Accept: 'text/event-stream', ...(lastId !== undefined && { 'Last-Event-ID': lastId }) }, cache: 'no-store', signal: abort.signal })
      if (!response.ok || !response.body) return response.status
      this.#options.onState({ kind: 'catching-up' })
      const [reader, decoder, pieces] = [new EventReader(), new TextDecoder(), response.body.getReader()]
      for (;;) {
        const { done, value } = await pieces.read()
        if (done) return 0
        heard()
        for (const event of reader.read(decoder.decode(value, { stream: true }))) {
          if (this.#options.onEvent(event) === false) {
            abort.abort()
            return 0
          }
          if (event.event !== 'ready') continue
          this.#failures = 0
          this.#options.onState({ kind: 'live' })
        }
      }
    } finally {
      clearTimeout(watchdog)
      abort.abort()
    }
  }

  #pause(wait_ms: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, wait_ms)
      this.#wake = () => { clearTimeout(timer); resolve() }
    })
  }
}
