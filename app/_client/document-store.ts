import { issue, type Issue } from '@/lib/issue'
import type { Edit, EditBody } from '@/lib/plan'
import { DiskQueue } from './disk-queue'
import { LOADING, type DocumentView, type Sending } from './document-view'
import type { Outbox } from './outbox'
import type { Received, Replica } from './replica'
import type { Shelf } from './shelf'
import { realTimers, type Timers } from './timers'
import { Unreachable, type Transport } from './transport'
import type { Unsent } from './unsent'

export type StoreEvents = {
  /** Edits of others came in, and edits made here did not come to stand. */
  received?(docId: string, received: Received): void
  /** The server has taken edits from here. */
  saved?(docId: string, sequence: number): void
  changed?(): void
}

/** `shelf`: where the document is kept as the server last had it, for when it is away. */
export type StoreOptions = { transport: Transport; outbox: Outbox; shelf?: Shelf; timers?: Timers; events?: StoreEvents }

/** Time an edit waits for company before it is sent, and the longest pause between tries. */
const SEND_WAIT_MS = 350
const LONGEST_PAUSE_MS = 30_000

type Rules = typeof import('./document-rules')

const loadRules = (): Promise<Rules> => import('./document-rules').catch((error: unknown) => { throw new Unreachable(String(error)) })

/** One document: its replica, its queue, and the talk with the server about it. */
export class DocumentStore {
  readonly docId: string
  /** There before any replica is. */
  #rules: Rules | undefined
  #replica: Replica | undefined
  #status: DocumentView['status'] = 'loading'
  #sending: Sending = 'idle'
  #issue: Issue | undefined
  #isAway = false
  #view: DocumentView = LOADING
  #listeners = new Set<() => void>()
  #cancelWait: (() => void) | undefined
  #failures = 0
  #talk: Promise<void> = Promise.resolve()
  readonly #disk: DiskQueue
  readonly #options: Required<Omit<StoreOptions, 'shelf'>> & Pick<StoreOptions, 'shelf'>

  constructor(docId: string, options: StoreOptions) {
    this.docId = docId
    this.#options = { timers: realTimers, events: {}, ...options }
    this.#disk = new DiskQueue(docId, options.outbox, () => this.#set(this.#replica))
  }

  view = (): DocumentView => this.#view

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  get isWatched(): boolean {
    return this.#listeners.size > 0
  }

  /** Loads the document, and lays what an earlier visit left unsent on top. */
  load(): Promise<void> {
    return this.#inTurn(async () => {
      const [rules, loaded] = await Promise.all([this.#rules ?? loadRules(), this.#options.transport.load(this.docId)])
      this.#rules = rules
      const { addUnsent, newReplica } = rules
      if ('code' in loaded) return this.#become('missing', loaded)
      if (loaded.isDeleted) return this.#become('deleted', undefined, newReplica(loaded.doc, loaded.sequence))
      const conflicts = this.#replica?.conflicts ?? (await this.#options.outbox.conflictsOf(this.docId))
      // What a person has to choose between is not sent: the device may have gone off before it left the queue.
      await this.#options.outbox.forget(conflicts.flatMap(({ mine }) => mine.map(({ editId }) => editId)))
      let replica: Replica = { ...newReplica(loaded.doc, loaded.sequence), conflicts }
      const refused: { unsent: Unsent; issue: Issue }[] = []
      for (const unsent of await this.#left(loaded.sequence)) {
        const added = addUnsent(replica, unsent.edit, unsent.label)
        if ('code' in added) refused.push({ unsent, issue: added })
        else replica = added.replica
      }
      const withdrawnIds = refused.map(({ unsent: { edit } }) => edit.id)
      await this.#options.outbox.forget(withdrawnIds)
      this.#become('ready', undefined, replica)
      this.#options.events.received?.(this.docId, { replica, foreignTouches: [], withdrawnIds, refused })
      if (replica.unsent.length > 0) this.#queue(0)
      return loaded.isKept && 'away'
    })
  }

  /** What is unsent from an earlier visit or from before a reload, less what the server turns out to have. */
  async #left(sequence: number): Promise<readonly Unsent[]> {
    const kept = await this.#options.outbox.unsentOf(this.docId)
    const held = this.#replica?.unsent ?? []
    const unsent = [...kept.filter(({ edit }) => !held.some((item) => item.edit.id === edit.id)), ...held]
    if (unsent.length === 0) return []
    const base = Math.min(...unsent.map(({ edit }) => edit.base))
    const known = base < sequence ? await this.#options.transport.since(this.docId, base) : { history: [] }
    const had = new Set(known.history.map(({ id }) => id))
    await this.#options.outbox.forget([...had])
    return unsent.filter(({ edit }) => !had.has(edit.id))
  }

  /** Applies edits at once and queues them, all or none; inverses come back in the order of the edits. */
  add(edits: readonly Edit[], label: string): { inverses: { editId: string; inverse: EditBody; touches: readonly string[] }[] } | Issue {
    const made = this.prepare(edits, label)
    if ('code' in made) return made
    made.commit()
    return { inverses: made.inverses }
  }

  /** As `add`, but nothing is kept until `commit` is called: for acts that span documents. */
  prepare(edits: readonly Edit[], label: string): { inverses: { editId: string; inverse: EditBody; touches: readonly string[] }[]; commit: () => void } | Issue {
    if (!this.#rules || !this.#replica || this.#status !== 'ready') return issue('document-not-open', 'block', [this.docId])
    const { addUnsent } = this.#rules
    let replica = this.#replica
    const inverses: { editId: string; inverse: EditBody; touches: readonly string[] }[] = []
    for (const edit of edits) {
      const added = addUnsent(replica, { ...edit, base: replica.sequence }, label)
      if ('code' in added) return added
      replica = added.replica
      inverses.push({ editId: edit.id, inverse: added.inverse, touches: added.touches })
    }
    const commit = () => {
      const ids = new Set(edits.map(({ id }) => id))
      this.#disk.keep(replica.unsent.filter(({ edit }) => ids.has(edit.id)))
      this.#set(replica)
      this.#queue(SEND_WAIT_MS)
    }
    return { inverses, commit }
  }

  /** Settles a conflict; the bodies to make afresh come back. */
  resolve(conflictId: string, choice: 'mine' | 'theirs'): readonly EditBody[] {
    if (!this.#rules || !this.#replica) return []
    const { replica, bodies } = this.#rules.resolveConflict(this.#replica, conflictId, choice)
    this.#set(replica)
    void this.#disk.keepConflicts(replica)
    return bodies
  }

  /** Sends all that is unsent, now. */
  flush(): Promise<void> {
    this.#cancelWait?.()
    this.#cancelWait = undefined
    return this.#inTurn(() => this.#sendAll())
  }

  /** The page goes away: what is unsent is sent without waiting; the outbox keeps it until the server is seen to have it. */
  sendLast(): void {
    const edits = this.#replica?.unsent.map(({ edit }) => edit) ?? []
    if (this.#status === 'ready' && edits.length > 0) this.#options.transport.sendLast(this.docId, edits)
  }

  /** Asks for what others have done since. */
  pull(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#rules || !this.#replica) return
      const { history, isDeleted } = await this.#options.transport.since(this.docId, this.#replica.sequence)
      this.#take(this.#rules.receive(this.#replica, history))
      if (isDeleted === (this.#status === 'deleted')) return
      this.#become(isDeleted ? 'deleted' : 'ready')
      this.#shelve()
    })
  }

  markDeleted(isDeleted: boolean): void {
    if (!this.#replica) return
    this.#become(isDeleted ? 'deleted' : 'ready')
    this.#shelve()
  }

  /** Puts what the server has of the document on the shelf; the device works without it, so a full one is no failure here. */
  #shelve(): void {
    if (!this.#replica) return
    const { confirmed: doc, sequence } = this.#replica
    void this.#options.shelf?.keep({ doc, sequence, isDeleted: this.#status === 'deleted' }).catch(() => undefined)
  }

  async #sendAll(): Promise<void> {
    await this.#rules?.sendQueue(this.#options.transport, {
      replica: () => this.#replica,
      isOpen: () => this.#status === 'ready',
      begin: () => { this.#setSending('sending') },
      take: (received) => { this.#take(received) },
      deleted: () => { this.#become('deleted') },
    })
    this.#setSending('idle')
  }

  #take(received: Received): void {
    const before = this.#replica
    this.#set(received.replica)
    const left = new Set(received.replica.unsent.map(({ edit }) => edit.id))
    const gone = before?.unsent.filter(({ edit }) => !left.has(edit.id)).map(({ edit }) => edit.id) ?? []
    if (received.replica.sequence !== before?.sequence) this.#shelve()
    void this.#disk.settle(received.replica, before, gone)
    if (gone.length > 0) this.#options.events.saved?.(this.docId, received.replica.sequence)
    this.#options.events.received?.(this.docId, received)
  }

  #queue(wait_ms: number): void {
    this.#cancelWait?.()
    if (this.#sending === 'idle') this.#setSending('queued')
    this.#cancelWait = this.#options.timers.after(wait_ms, () => void this.flush())
  }

  /** One exchange with the server at a time, in the order asked for. */
  #inTurn(exchange: () => Promise<'away' | void>): Promise<void> {
    const turn = this.#talk.then(async () => {
      try {
        this.#setAway((await exchange()) === 'away')
        this.#failures = 0
      } catch (error) {
        this.#recover(error)
      }
    })
    this.#talk = turn.catch(() => undefined)
    return turn
  }

  #recover(error: unknown): void {
    const pause_ms = Math.min(LONGEST_PAUSE_MS, 1000 * 2 ** this.#failures)
    this.#failures += 1
    if (error instanceof RangeError) {
      this.#cancelWait = this.#options.timers.after(this.#failures > 1 ? pause_ms : 0, () => void this.load())
      return
    }
    this.#setAway(true)
    if (!this.#replica) this.#become('unreachable', issue('server-unreachable', 'warn', [this.docId]))
    if (!this.#replica || this.#replica.unsent.length > 0) {
      this.#setSending('waiting')
      this.#cancelWait?.()
      this.#cancelWait = this.#options.timers.after(pause_ms, () => void (this.#replica ? this.flush() : this.load()))
    }
    if (!(error instanceof Unreachable)) throw error
  }

  #become(status: DocumentView['status'], why?: Issue, replica = this.#replica): void {
    this.#status = status
    this.#issue = why
    this.#set(replica)
  }

  #setAway(isAway: boolean): void {
    if (this.#isAway === isAway) return
    this.#isAway = isAway
    this.#set(this.#replica)
  }

  #setSending(sending: Sending): void {
    if (this.#sending === sending) return
    this.#sending = sending
    this.#set(this.#replica)
  }

  #set(replica: Replica | undefined): void {
    this.#replica = replica
    this.#view = {
      status: this.#status,
      ...(replica && { doc: replica.view }),
      sequence: replica?.sequence ?? 0,
      unsentCount: replica?.unsent.length ?? 0,
      unkeptCount: this.#disk.unkeptCount(replica?.unsent ?? []),
      conflicts: replica?.conflicts ?? [],
      sending: this.#sending,
      isAway: this.#isAway,
      ...(this.#issue && { issue: this.#issue }),
    }
    for (const listener of this.#listeners) listener()
    this.#options.events.changed?.()
  }
}
