import { issue, type Issue } from '@/lib/issue'
import type { DocumentEntry, LoadedDocument, SequencedEdit, Transport } from './transport'
import { Unreachable } from './transport'

type ErrorBody = { error?: { code?: string; path?: string; sentence?: string; issue?: Issue }; history?: SequencedEdit[] }

/** A signal that comes and goes leaves requests hanging; asked again, they come through or are known not to. */
const LONGEST_MS = 20_000

/** Answers that say nothing about the request itself: asking again later may help. So may joining again, where a device is no longer let in (401): its changes are kept until then. */
const PASSING = [401, 408, 425, 429, 500, 502, 503, 504]

/** The server behind `/api`, by fetch. */
export function httpTransport(root = '/api', fetcher: typeof fetch = (input, init) => fetch(input, init)): Transport {
  const ask = async (path: string, init?: RequestInit): Promise<Response> => {
    const response = await fetcher(`${root}/documents${path}`, { cache: 'no-store', signal: AbortSignal.timeout(LONGEST_MS), ...init }).catch((error: unknown) => {
      throw new Unreachable(String(error))
    })
    if (PASSING.includes(response.status)) throw new Unreachable(String(response.status))
    return response
  }
  const place = (docId: string) => `/${encodeURIComponent(docId)}`
  const send = (docId: string, edits: readonly unknown[], init: RequestInit = {}) =>
    ask(`${place(docId)}/edits`, { ...asJson({ edits }), ...init })

  return {
    async list({ withDeleted } = {}) {
      const response = await ask(withDeleted ? '?withDeleted=1' : '')
      if (!response.ok) throw new Unreachable(String(response.status))
      return ((await read(response)) as { documents: DocumentEntry[] }).documents
    },
    async load(docId) {
      const response = await ask(place(docId))
      return response.ok ? ((await read(response)) as LoadedDocument) : issueFrom(response, docId)
    },
    async create(doc) {
      const response = await ask('', asJson({ doc }))
      return response.ok ? ((await read(response)) as LoadedDocument) : issueFrom(response, doc.id)
    },
    async send(edit) {
      const response = await send(edit.docId, [edit])
      if (response.ok) return { kind: 'applied', history: ((await read(response)) as { history: SequencedEdit[] }).history }
      const body = response.status === 409 ? ((await read(response.clone())) as ErrorBody) : {}
      if (body.error?.code === 'overlap') return { kind: 'overlap', history: body.history ?? [] }
      // The server's copy is older than what it once confirmed, after a restored backup: the document is loaded again.
      if (body.error?.code === 'base-ahead') throw new RangeError(`base is ${edit.base}, must be a state the server has`)
      return { kind: 'refused', issue: await issueFrom(response, edit.docId) }
    },
    async since(docId, sequence) {
      const history: SequencedEdit[] = []
      let isDeleted = false
      for (let after = sequence, isMore = true; isMore; ) {
        const response = await ask(`${place(docId)}/edits?after=${after}`)
        if (!response.ok) throw new RangeError(`document ${docId} answers ${response.status}, must be there`)
        const page = (await read(response)) as { sequence: number; history: SequencedEdit[]; isDeleted?: boolean }
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

const asJson = (body: unknown): RequestInit => ({ method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) })

/** A body that is not what it should be comes from something between here and the server. */
async function read(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch (error) {
    throw new Unreachable(String(error))
  }
}

const issueUnlessDone = async (response: Response, docId: string): Promise<Issue | undefined> => (response.ok ? undefined : issueFrom(response, docId))

async function issueFrom(response: Response, docId: string): Promise<Issue> {
  const { error } = (await read(response)) as ErrorBody
  if (error?.issue) return error.issue
  if (error?.code === 'taken') return issue('document-taken', 'block', [docId])
  if (response.status === 404) return issue('document-missing', 'block', [docId])
  if (response.status === 410) return issue('document-deleted', 'block', [docId])
  return issue('server-refused', 'block', [docId], { reason: error?.sentence ?? String(response.status) })
}
