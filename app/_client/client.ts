import { issue, type Issue } from '@/lib/issue'
import { documentKindOf, type EditableDocument, type EditBody } from '@/lib/plan'
import { DocumentStore } from './document-store'
import type { DocumentView } from './document-view'
import { keepDocuments } from './keep-documents'
import { mintId } from './mint-id'
import { memoryOutbox, type Outbox } from './outbox'
import type { Received } from './replica'
import { allSaved, saveStateOf, type SaveState } from './save-state'
import { memoryShelf, type Shelf } from './shelf'
import { realTimers, type Timers } from './timers'
import { Unreachable, type DocumentEntry, type Transport } from './transport'
import { emptyUndoStack, isBuiltOn, overtakenBy, pushed, undoStateOf, withoutEdits, withoutPutAway, type UndoEntry, type UndoStack, type UndoState, type UndoStep } from './undo-stack'

export type DocumentList = { status: 'loading' | 'ready' | 'unreachable'; entries: readonly DocumentEntry[] }
export type Change = { docId: string; body: EditBody | readonly EditBody[] }
/** `label`: what the act is called, beside "Undo". Acts in a row with one `mergeKey` are undone as one. `isOfTime`: what goes on by itself, such as a clock: nothing to take back. */
export type ActOptions = { label: string; mergeKey?: string; isOfTime?: boolean }

export type ClientOptions = {
  transport: Transport
  outbox?: Outbox
  /** Documents as the server last had them, for when it is away. */
  shelf?: Shelf
  timers?: Timers
  /** Who makes the edits: goes with each of them. */
  actor?: string
  newId?: () => string
  now?: () => string
  /** Tells other windows of this browser that a document, or the list (no id), has changed. */
  announce?: (docId?: string) => void
}

/** The one door for documents: opens, edits, undoes, saves and lists them. */
export class Client {
  readonly #options: Required<ClientOptions>
  readonly #stores = new Map<string, DocumentStore>()
  readonly #listeners = new Set<() => void>()
  #stack: UndoStack = emptyUndoStack
  #refusals: SaveState['refusals'] = []
  #save: SaveState = allSaved
  #undo: UndoState = undoStateOf(emptyUndoStack)
  #list: DocumentList = { status: 'loading', entries: [] }
  #opening: Promise<void> | undefined

  constructor(options: ClientOptions) {
    this.#options = {
      outbox: memoryOutbox(), shelf: memoryShelf(), timers: realTimers, actor: 'someone', newId: mintId,
      now: () => new Date().toISOString(), announce: () => undefined, ...options,
    }
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }
  saveState = (): SaveState => this.#save
  undoState = (): UndoState => this.#undo
  documentList = (): DocumentList => this.#list
  newId = (): string => this.#options.newId()

  /** The store of a document; loading begins the first time it is asked for. */
  open(docId: string): DocumentStore {
    const there = this.#stores.get(docId)
    if (there) return there
    const { transport, outbox, shelf, timers, announce } = this.#options
    const store = new DocumentStore(docId, {
      transport, outbox, shelf, timers,
      events: { received: (id, received) => this.#received(id, received), saved: (id) => announce(id), changed: () => this.#changed() },
    })
    this.#stores.set(docId, store)
    void store.load()
    return store
  }

  view = (docId: string): DocumentView => this.open(docId).view()

  /** One act of the user on one document. The issue says why nothing was changed. */
  edit(docId: string, body: EditBody | readonly EditBody[], options: ActOptions): Issue | undefined {
    return this.act([{ docId, body }], options)
  }

  /** One act of the user, on one document or several: all of it or nothing, and one step of undo. */
  act(changes: readonly Change[], { label, mergeKey, isOfTime = false }: ActOptions): Issue | undefined {
    const steps = this.#apply(changes, label)
    if ('code' in steps) return steps
    if (steps.length > 0 && !isOfTime) this.#setStack(pushed(this.#stack, { id: this.newId(), label, steps, ...(mergeKey && { mergeKey }) }))
    return undefined
  }

  /** The act just done, to take back that one and no other later. */
  lastActId = (): string | undefined => this.#stack.done.at(-1)?.id

  /** Takes the last act back, or that of a `lastActId`; the issue says what could not be, because it was changed since. */
  undo = (actId?: string): Promise<Issue | undefined> => this.#turnBack('done', actId)
  redo = (): Promise<Issue | undefined> => this.#turnBack('undone')

  /** Keeps one of two values. Choosing mine is a new act. */
  resolve(docId: string, conflictId: string, choice: 'mine' | 'theirs', options: ActOptions): Issue | undefined {
    const bodies = this.open(docId).resolve(conflictId, choice)
    return bodies.length > 0 ? this.edit(docId, bodies, options) : undefined
  }

  dismissRefusal(id: string): void {
    this.#refusals = this.#refusals.filter((refusal) => refusal.id !== id)
    this.#changed()
  }

  /** Keeps new documents on the server: a district before the plans of it. Undo takes them away again, but never a district: all that was entered since would go with it. */
  async create(docs: EditableDocument | readonly EditableDocument[], { label }: ActOptions): Promise<Issue | undefined> {
    const list: readonly EditableDocument[] = Array.isArray(docs) ? docs : [docs as EditableDocument]
    const steps: UndoStep[] = []
    let refused: Issue | undefined
    for (const doc of list) {
      const made = await answered(this.#options.transport.create(doc, label))
      if (made && 'code' in made) {
        refused = made
        break
      }
      if (documentKindOf(doc) !== 'district') steps.unshift({ kind: 'remove', docId: doc.id })
    }
    if (steps.length > 0) this.#setStack(pushed(this.#stack, { id: this.newId(), label, steps: [...steps].reverse() }))
    await this.#listChanged()
    return refused
  }

  /** Puts a document away; undo brings it back. */
  async remove(docId: string, { label }: ActOptions): Promise<Issue | undefined> {
    const refused = await this.#putAway(docId, true)
    if (!refused) this.#setStack(pushed(this.#stack, { id: this.newId(), label, steps: [{ kind: 'restore', docId }] }))
    return refused
  }

  /** Brings back what was put away, by whomever; nothing to undo: it can be put away again. */
  async bringBack(docId: string): Promise<Issue | undefined> {
    const refused = await this.#putAway(docId, false)
    if (!refused) this.#setStack(withoutPutAway(this.#stack, docId))
    return refused
  }

  /**
   * The list with what was put away in it.
   *
   * @throws Unreachable when the server is
   */
  listWithPutAway = (): Promise<DocumentEntry[]> => this.#options.transport.list({ withDeleted: true })

  async refreshList(): Promise<void> {
    try {
      this.#list = { status: 'ready', entries: await this.#options.transport.list() }
    } catch {
      this.#list = { ...this.#list, status: this.#list.status === 'ready' ? 'ready' : 'unreachable' }
    }
    this.#changed()
  }

  /** The list for a screen that opens: parts of it that ask together are answered by one. After a change, ask with `refreshList`. */
  openList = (): Promise<void> => (this.#opening ??= this.refreshList().finally(() => { this.#opening = undefined }))

  /** As `keepDocuments` of the station and the shelf that this client has. */
  keepDocuments = (districtId: string): Promise<string[]> => keepDocuments(this.#options.transport, this.#options.shelf, districtId)

  /** Sends all that is unsent, now. */
  async flush(): Promise<void> {
    await Promise.all([...this.#stores.values()].map((store) => store.flush()))
  }

  /** Takes up what earlier visits left unsent, of any document. */
  async resume(): Promise<void> {
    for (const docId of await this.#options.outbox.docIds()) this.open(docId)
  }

  /** The page goes away: sends what is unsent without waiting. */
  sendLast(): void {
    for (const store of this.#stores.values()) store.sendLast()
  }

  /** Asks what others have done: to one document, or to all that are on a screen. */
  async pull(docId?: string): Promise<void> {
    const stores = docId ? [this.#stores.get(docId)] : [...this.#stores.values()].filter(({ isWatched }) => isWatched)
    await Promise.all(stores.map((store) => store?.pull()))
  }

  #apply(changes: readonly Change[], label: string): UndoStep[] | Issue {
    const { newId, now, actor } = this.#options
    const bodiesOf = new Map<string, EditBody[]>()
    for (const { docId, body } of changes) bodiesOf.set(docId, [...(bodiesOf.get(docId) ?? []), ...(Array.isArray(body) ? (body as EditBody[]) : [body as EditBody])])
    const commits: (() => void)[] = []
    const steps: UndoStep[] = []
    for (const [docId, bodies] of bodiesOf) {
      const edits = bodies.map((body) => ({ id: newId(), docId, base: 0, by: actor, at: now(), body }))
      const made = this.open(docId).prepare(edits, label)
      if ('code' in made) return made
      commits.push(made.commit)
      steps.push(...made.inverses.map((step) => ({ kind: 'edit' as const, docId, isOvertaken: false, ...step })))
    }
    for (const commit of commits) commit()
    return steps
  }

  async #turnBack(side: 'done' | 'undone', actId?: string): Promise<Issue | undefined> {
    const entry = actId === undefined ? this.#stack[side].at(-1) : this.#stack[side].find(({ id }) => id === actId)
    if (!entry) return undefined
    if (side === 'done' && isBuiltOn(this.#stack, entry)) return issue('undo-overtaken', 'warn', entry.steps.map(({ docId }) => docId), { path: entry.label })
    const place = this.#stack[side].indexOf(entry)
    this.#setStack({ ...this.#stack, [side]: this.#stack[side].toSpliced(place, 1) })
    const { steps, issue: refused } = await this.#takeBack(entry)
    if (steps.length === 0 && refused?.code === 'server-unreachable') this.#setStack({ ...this.#stack, [side]: this.#stack[side].toSpliced(place, 0, entry) })
    if (steps.length > 0) {
      const other = side === 'done' ? 'undone' : 'done'
      this.#setStack({ ...this.#stack, [other]: [...this.#stack[other], { id: entry.id, label: entry.label, steps }] })
    }
    return refused
  }

  /** Does the inverse of each step, last first; the steps that would do them again come back. */
  async #takeBack({ label, steps }: UndoEntry): Promise<{ steps: UndoStep[]; issue?: Issue }> {
    const again: UndoStep[] = []
    let refused: Issue | undefined
    for (const step of [...steps].reverse()) {
      if (step.kind !== 'edit') {
        const why = await this.#putAway(step.docId, step.kind === 'remove')
        if (why) refused ??= why
        else again.push({ kind: step.kind === 'remove' ? 'restore' : 'remove', docId: step.docId })
      } else if (step.isOvertaken) {
        refused ??= issue('undo-overtaken', 'warn', [step.docId], { path: step.touches.join(', ') })
      } else {
        const made = this.#apply([{ docId: step.docId, body: step.inverse }], label)
        if ('code' in made) refused ??= made
        else again.push(...made)
      }
    }
    return { steps: again, ...(refused && { issue: refused }) }
  }

  async #putAway(docId: string, isDeleted: boolean): Promise<Issue | undefined> {
    const { transport } = this.#options
    await this.#stores.get(docId)?.flush()
    const refused = await answered(isDeleted ? transport.remove(docId) : transport.restore(docId))
    if (refused) return refused
    this.#stores.get(docId)?.markDeleted(isDeleted)
    this.#options.announce(docId)
    await this.#listChanged()
    return undefined
  }

  async #listChanged(): Promise<void> {
    this.#options.announce()
    await this.refreshList()
  }

  /** A document made here that the server will not have. */
  refuse({ docId, label, issue: why }: { docId: string; label: string; issue: Issue }): void {
    this.#refusals = [...this.#refusals, { id: docId, docId, label, issue: why }]
    this.#changed()
  }

  #received(docId: string, { foreignTouches, withdrawnIds, refused }: Received): void {
    this.#refusals = [...this.#refusals, ...refused.map(({ unsent: { edit, label }, issue: why }) => ({ id: edit.id, docId, label, issue: why }))]
    this.#setStack(overtakenBy(withoutEdits(this.#stack, withdrawnIds), docId, foreignTouches))
  }

  #setStack(stack: UndoStack): void {
    this.#stack = stack
    this.#undo = undoStateOf(stack)
    this.#changed()
  }

  #changed(): void {
    const stores = [...this.#stores.values()]
    this.#save = saveStateOf(stores.map((store) => store.view()), this.#refusals, stores.some((store) => store.isWatched && store.view().isAway))
    for (const listener of this.#listeners) listener()
  }
}

/** No answer is an issue like any other to what needs the server there and then. */
async function answered<T>(asked: Promise<T>): Promise<T | Issue> {
  try {
    return await asked
  } catch (error) {
    if (error instanceof Unreachable) return issue('server-unreachable', 'warn')
    throw error
  }
}
