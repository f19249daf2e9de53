import { mergeEvents } from '@/lib/field-log/merge-events'
import type { SiteEvent } from '@/lib/plan'
import { realTimers, type Timers } from '../timers'
import type { EventDisk } from './event-disk'
import type { EventTransport } from './event-transport'

/** What a screen reads of the events of a log. The same object until something changes. */
export type EventsView = {
  status: 'loading' | 'ready'
  /** All that this device knows, in the order of `byTime`. */
  events: readonly SiteEvent[]
  /** Ids of those that the station does not have yet. */
  unsent: ReadonlySet<string>
  /** Ids of those that are in this window alone: the device's disk would not take them. */
  unkept: ReadonlySet<string>
  /** The last talk with the station came to nothing. */
  isAway: boolean
  /** Why the station would not have an event, in its words. */
  refused: string | undefined
}

export type EventLogOptions = {
  disk: EventDisk
  transport: EventTransport
  timers?: Timers
  /** Called when the station does not have the log: it may have been made here and wait to be sent. */
  sendLog?: () => Promise<void>
  /** Something has come to the disk. */
  kept?: () => void
}

const AT_ONCE = 200
const [FIRST_WAIT_MS, LONGEST_WAIT_MS] = [2000, 60_000]

/** The events of one log on this device: on the disk first, then on the screen, then at the station. */
export class EventLog {
  readonly #logId: string
  readonly #options: Required<EventLogOptions>
  readonly #listeners = new Set<() => void>()
  readonly #byId = new Map<string, SiteEvent>()
  readonly #unsent = new Set<string>()
  readonly #unkept = new Set<string>()
  /** Refused by themselves: not sent again before the page is opened anew. */
  readonly #stuck = new Set<string>()
  #view: EventsView = { status: 'loading', events: [], unsent: new Set(), unkept: new Set(), isAway: false, refused: undefined }
  #turn: Promise<void> = Promise.resolve()
  #stopWaiting: (() => void) | undefined
  #wait_ms = FIRST_WAIT_MS

  constructor(logId: string, options: EventLogOptions) {
    this.#logId = logId
    this.#options = { timers: realTimers, sendLog: async () => undefined, kept: () => undefined, ...options }
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }
  view = (): EventsView => this.#view
  get isWatched(): boolean { return this.#listeners.size > 0 }

  /** What is on the disk; also what another window has put there since. */
  async load(): Promise<void> {
    for (const { event, isSent } of await this.#options.disk.eventsOf(this.#logId).catch(() => [])) {
      this.#byId.set(event.id, event)
      if (isSent) this.#unsent.delete(event.id)
      else this.#unsent.add(event.id)
    }
    this.#changed({ status: 'ready' })
  }

  /**
   * Keeps events on the disk, then shows them, then sends them.
   *
   * @returns false where the disk would not take them: they are shown, marked, and sent while the window lasts
   */
  async add(events: readonly SiteEvent[]): Promise<boolean> {
    let isKept = true
    try {
      await this.#options.disk.keep(events, false)
    } catch {
      isKept = false
      for (const { id } of events) this.#unkept.add(id)
    }
    for (const event of events) {
      this.#byId.set(event.id, event)
      this.#unsent.add(event.id)
    }
    this.#changed({})
    this.#options.kept()
    void this.sync()
    return isKept
  }

  /** Sends what is unsent and fetches what others have sent; one after the other, however often it is asked for. */
  sync(): Promise<void> {
    this.#stopWaiting?.()
    this.#stopWaiting = undefined
    this.#turn = this.#turn.then(() => this.#sync()).catch(() => undefined)
    return this.#turn
  }

  async #sync(): Promise<void> {
    try {
      const isDone = await this.#sendAll()
      await this.#pull()
      this.#wait_ms = FIRST_WAIT_MS
      this.#changed({ isAway: false })
      if (!isDone) this.#later()
    } catch {
      this.#changed({ isAway: true })
      this.#later()
    }
  }

  /** @returns false while something waits that may be taken later */
  async #sendAll(): Promise<boolean> {
    for (;;) {
      const batch = this.#toSend().slice(0, AT_ONCE)
      if (batch.length === 0) return true
      const answer = await this.#options.transport.send(this.#logId, batch)
      if (answer.kind === 'taken') await this.#taken(batch)
      else if (answer.isMissing) {
        await this.#options.sendLog()
        const again = await this.#options.transport.send(this.#logId, batch)
        if (again.kind !== 'taken') {
          this.#changed({ refused: again.sentence })
          return false
        }
        await this.#taken(batch)
      } else if (!answer.isAboutEvents) {
        this.#changed({ refused: answer.sentence })
        return false
      } else if (batch.length === 1) {
        for (const { id } of batch) this.#stuck.add(id)
        this.#changed({ refused: answer.sentence })
      } else await this.#sendSingly(batch)
    }
  }

  /** One bad event holds none of the others back. */
  async #sendSingly(batch: readonly SiteEvent[]): Promise<void> {
    for (const event of batch) {
      const answer = await this.#options.transport.send(this.#logId, [event])
      if (answer.kind === 'taken') await this.#taken([event])
      else {
        this.#stuck.add(event.id)
        this.#changed({ refused: answer.sentence })
      }
    }
  }

  #toSend = (): SiteEvent[] => mergeEvents([...this.#unsent].filter((id) => !this.#stuck.has(id)).flatMap((id) => this.#byId.get(id) ?? []))

  async #taken(events: readonly SiteEvent[]): Promise<void> {
    await this.#options.disk.keep(events, true).catch(() => undefined)
    for (const { id } of events) {
      this.#unsent.delete(id)
      this.#unkept.delete(id)
    }
    this.#changed(this.#stuck.size === 0 ? { refused: undefined } : {})
  }

  async #pull(): Promise<void> {
    const { disk, transport } = this.#options
    for (;;) {
      const after = await disk.cursorOf(this.#logId)
      const page = await transport.since(this.#logId, after)
      if (page === 'missing') return
      if (page.total < after) {
        await disk.sendAgain(this.#logId)
        for (const id of this.#byId.keys()) this.#unsent.add(id)
        return void this.#later()
      }
      const fresh = page.events.filter(({ id }) => !this.#byId.has(id) || this.#unsent.has(id))
      if (fresh.length > 0) await disk.keep(fresh, true)
      await disk.keepCursor(this.#logId, page.last)
      for (const event of page.events) {
        this.#byId.set(event.id, event)
        this.#unsent.delete(event.id)
      }
      if (fresh.length > 0) this.#changed({})
      if (page.events.length === 0 || page.last >= page.total) return
    }
  }

  #later(): void {
    this.#stopWaiting?.()
    this.#stopWaiting = this.#options.timers.after(this.#wait_ms, () => void this.sync())
    this.#wait_ms = Math.min(2 * this.#wait_ms, LONGEST_WAIT_MS)
  }

  #changed(change: Partial<EventsView>): void {
    const isSame = this.#view.events.length === this.#byId.size
    this.#view = {
      ...this.#view, ...change, unsent: new Set(this.#unsent), unkept: new Set(this.#unkept),
      events: isSame ? this.#view.events : mergeEvents([...this.#byId.values()]),
    }
    for (const listener of this.#listeners) listener()
  }
}
