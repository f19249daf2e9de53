import { issue, type Issue } from '@/lib/issue'
import { documentKindOf, type EditableDocument } from '@/lib/plan'
import type { Outbox } from './outbox'
import type { Shelf } from './shelf'
import { realTimers, type Timers } from './timers'
import { Unreachable, type DocumentEntry, type LoadedDocument, type Transport } from './transport'

/** Where there is hardly any signal, a document that is here is shown after this long; the server's newer one follows. */
const PATIENCE_MS = 2500

export type KeptTransportOptions = {
  server: Transport
  shelf: Shelf
  outbox: Outbox
  timers?: Timers
  /** A document made here while the server was away, that it will not have; it stays on this device. */
  refused?: (created: { docId: string; label: string; issue: Issue }) => void
}

/**
 * The server, and this device in its place while it is away: documents and lists come from the shelf then,
 * new documents wait in the outbox and are sent before anything else is said of them.
 */
export function keptTransport({ server, shelf, outbox, timers = realTimers, refused }: KeptTransportOptions): Transport {
  const said = new Set<string>()

  /** Documents made here that wait for the server; nothing is asked of the disk again while there are none. */
  let waiting: Promise<EditableDocument[]> | undefined
  const waitingDocs = () => (waiting ??= outbox.created().then((all) => all.map(({ doc }) => doc), () => []))
  const isWaiting = async (docId: string) => (await waitingDocs()).some(({ id }) => id === docId)

  let turn: Promise<void> = Promise.resolve()
  /** Sends what was made here, in order: a plan is not taken before its district. */
  const settle = (): Promise<void> => {
    const done = turn.then(async () => {
      if ((await waitingDocs()).length === 0) return
      for (const { doc, label } of await outbox.created()) {
        const made = await server.create(doc)
        const why = 'code' in made && made.code !== 'document-taken' ? made : undefined
        if (why && !said.has(doc.id)) refused?.({ docId: doc.id, label, issue: why })
        if (why) said.add(doc.id)
        else await outbox.forgetCreated(doc.id)
      }
      waiting = undefined
    })
    turn = done.catch(() => undefined)
    return done
  }
  /** What concerns a document that the server has yet to get is said after it. */
  const after = async <T>(docId: string, ask: () => Promise<T>): Promise<T> => {
    if (await isWaiting(docId)) await settle()
    return ask()
  }
  const fromShelf = async (docId: string, error: unknown) => {
    const kept = error instanceof Unreachable ? await shelf.find(docId) : undefined
    if (!kept) throw error
    return { doc: kept.doc, sequence: kept.sequence, isDeleted: kept.isDeleted, isKept: true as const }
  }
  const fromServer = async (docId: string) => {
    const loaded = await after(docId, () => server.load(docId))
    if (!('code' in loaded)) await shelf.keep(loaded).catch(() => undefined)
    return 'code' in loaded && (await isWaiting(docId)) ? fromShelf(docId, new Unreachable(loaded.code)) : loaded
  }

  return {
    async list(options) {
      try {
        if ((await waitingDocs()).length > 0) await settle()
        const entries = await server.list(options)
        if (!options?.withDeleted) await shelf.keepList(entries).catch(() => undefined)
        return entries
      } catch (error) {
        const kept = error instanceof Unreachable ? await shelf.list() : undefined
        const made = (await waitingDocs()).map(entryOf)
        if (!kept && made.length === 0) throw error
        return [...made, ...(kept ?? [])]
      }
    },
    async load(docId) {
      const asked: Promise<LoadedDocument | Issue> = fromServer(docId).catch((error: unknown) => fromShelf(docId, error))
      if (!(await shelf.find(docId).catch(() => undefined))) return asked
      let stop = () => {}
      const patience = new Promise<void>((resolve) => { stop = timers.after(PATIENCE_MS, resolve) })
      const first = await Promise.race([asked, patience.then(() => undefined)])
      stop()
      return first ?? fromShelf(docId, new Unreachable('no answer yet'))
    },
    async create(doc, label = '') {
      try {
        if ((await waitingDocs()).length > 0) await settle()
        const made = await server.create(doc)
        if (!('code' in made)) await shelf.keep(made).catch(() => undefined)
        return made
      } catch (error) {
        if (!(error instanceof Unreachable)) throw error
        const loaded = { doc, sequence: 0, isDeleted: false }
        await shelf.keep(loaded)
        await outbox.keepCreated({ doc, label })
        waiting = undefined
        return loaded
      }
    },
    async send(edits) {
      const docId = edits[0]?.docId ?? ''
      const answer = await after(docId, async () => ((await isWaiting(docId)) ? undefined : server.send(edits)))
      if (!answer) throw new Unreachable('the document itself has not been taken')
      if (answer.kind !== 'refused' || answer.issue.code !== 'document-missing') return answer
      // Made in another window that has closed since.
      waiting = undefined
      if (!(await isWaiting(docId))) return answer
      await settle()
      return server.send(edits)
    },
    since: (docId, sequence) => after(docId, () => server.since(docId, sequence)),
    async remove(docId) {
      if (!(await isWaiting(docId))) return server.remove(docId)
      const kept = await shelf.find(docId)
      if (kept) await shelf.keep({ ...kept, isDeleted: true })
      await outbox.forgetCreated(docId)
      waiting = undefined
      return undefined
    },
    async restore(docId) {
      const answer = await server.restore(docId).catch((error: unknown) => (error instanceof Unreachable ? issue('server-unreachable', 'warn') : Promise.reject(error)))
      const kept = answer && (await shelf.find(docId))
      // Put away before the server ever had it: made anew.
      if (!kept || !kept.isDeleted || kept.sequence > 0) return answer
      const made = await this.create(kept.doc)
      return 'code' in made ? made : undefined
    },
    sendLast: (docId, edits) => server.sendLast(docId, edits),
  }
}

const entryOf = (doc: EditableDocument): DocumentEntry => ({
  id: doc.id,
  kind: documentKindOf(doc),
  name: typeof doc.name === 'string' ? doc.name : '',
  ...(typeof doc.districtId === 'string' && { districtId: doc.districtId }),
  sequence: 0,
})
