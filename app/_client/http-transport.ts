import { issue, type Issue } from '@/lib/issue'
import type { Edit } from '@/lib/plan'
import { askStation, asJson, readAnswer } from './ask-station'
import type { DocumentEntry, LoadedDocument, SequencedEdit, Transport } from './transport'
import { Unreachable } from './transport'

type ErrorBody = { error?: { code?: string; path?: string; sentence?: string; issue?: Issue }; history?: SequencedEdit[] }

/** The server behind `/api`, by fetch. */
export function httpTransport(root = '/api', fetcher: typeof fetch = (input, init) => fetch(input, init)): Transport {
  const ask = (path: string, init?: RequestInit) => askStation(`${root}/documents${path}`, init, fetcher)
  const place = (docId: string) => `/${encodeURIComponent(docId)}`
  const send = (docId: string, edits: readonly unknown[], init: RequestInit = {}) =>
    ask(`${place(docId)}/edits`, { ...asJson({ edits }), ...init })

  return {
    async list({ withDeleted } = {}) {
      const response = await ask(withDeleted ? '?withDeleted=1' : '')
      if (!response.ok) throw new Unreachable(String(response.status))
      return ((await readAnswer(response)) as { documents: DocumentEntry[] }).documents
    },
    async load(docId) {
      const response = await ask(place(docId))
      return response.ok ? ((await readAnswer(response)) as LoadedDocument) : issueFrom(response, docId)
    },
    async create(doc) {
      const response = await ask('', asJson({ doc }))
      return response.ok ? ((await readAnswer(response)) as LoadedDocument) : issueFrom(response, doc.id)
    },
    async send(edits) {
      const [{ docId, base }] = edits as readonly [Edit]
      const response = await send(docId, edits)
      if (response.ok) return { kind: 'applied', history: ((await readAnswer(response)) as { history: SequencedEdit[] }).history }
      const body = response.status === 409 ? ((await readAnswer(response.clone())) as ErrorBody) : {}
      if (body.error?.code === 'overlap') return { kind: 'overlap', history: body.history ?? [] }
      // The server's copy is older than what it once confirmed, after a restored backup: the document is loaded again.
      if (body.error?.code === 'base-ahead') throw new RangeError(`base is ${base}, must be a state the server has`)
      return { kind: 'refused', issue: await issueFrom(response, docId) }
    },
    async since(docId, sequence) {
      const history: SequencedEdit[] = []
      let isDeleted = false
      for (let after = sequence, isMore = true; isMore; ) {
        const response = await ask(`${place(docId)}/edits?after=${after}`)
        if (!response.ok) throw new RangeError(`document ${docId} answers ${response.status}, must be there`)
        const page = (await readAnswer(response)) as { sequence: number; history: SequencedEdit[]; isDeleted?: boolean }
        history.push(...page.history)
        isDeleted = page.isDeleted ?? false
        after = page.history.at(-1)?.sequence ?? page.sequence
        isMore = page.history.length > 0 && after < page.sequence
      }
      return { history, isDeleted }
    },
    remove: async (docId) => issueUnlessDone(await ask(place(docId), { method: 'DELETE' }), docId),
    restore: async (docId) => issueUnlessDone(await ask(`${place(docId)}/restore`, { method: 'POST' }), docId),
    sendLast(docId, edits) {
      void send(docId, edits, { keepalive: true }).catch(() => undefined)
    },
  }
}

const issueUnlessDone = async (response: Response, docId: string): Promise<Issue | undefined> => (response.ok ? undefined : issueFrom(response, docId))

async function issueFrom(response: Response, docId: string): Promise<Issue> {
  const { error } = (await readAnswer(response)) as ErrorBody
  if (error?.issue) return error.issue
  if (error?.code === 'taken') return issue('document-taken', 'block', [docId])
  if (response.status === 404) return issue('document-missing', 'block', [docId])
  if (response.status === 410) return issue('document-deleted', 'block', [docId])
  return issue('server-refused', 'block', [docId], { reason: error?.sentence ?? String(response.status) })
}
