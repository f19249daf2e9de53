import type { Issue } from '@/lib/issue'
import { sayIssue, say, type TextValues } from '@/app/_text'
import '@/app/_text/areas/server'

/** Codes of the server's own refusals; each has its words under `server.` in the message files. */
export type RefusalCode =
  | 'wrong-host' | 'other-origin' | 'wrong-content-type' | 'too-large' | 'not-json' | 'not-found' | 'deleted' | 'taken'
  | 'district-missing' | 'base-ahead' | 'edit-id-taken' | 'event-id-taken' | 'log-full' | 'other-document' | 'overlap' | 'wrong-hash' | 'busy' | 'unexpected'
  | 'archive-not-zip' | 'archive-no-manifest' | 'archive-newer' | 'archive-too-large' | 'archive-part-missing' | 'archive-part-extra' | 'archive-part-twice'
  | 'join-first' | 'join-too-often' | 'join-wrong-code' | 'read-only' | 'beyond-grant' | 'no-network'
  | 'no-seat' | 'seat-not-yours' | 'seat-in-order' | 'seat-too-often' | 'exercise-not-begun' | 'exercise-over'
  | 'archive-part-damaged' | 'archive-part-wrong' | 'archive-history' | 'archive-events' | 'archive-apart' | 'archive-here'

const STATUS: Record<RefusalCode, number> = {
  'wrong-host': 421,
  'other-origin': 403,
  'wrong-content-type': 415,
  'too-large': 413,
  'not-json': 400,
  'not-found': 404,
  deleted: 410,
  taken: 409,
  'district-missing': 422,
  'base-ahead': 409,
  'edit-id-taken': 409,
  'event-id-taken': 409,
  'log-full': 409,
  'other-document': 422,
  overlap: 409,
  'wrong-hash': 422,
  busy: 503,
  unexpected: 500,
  'join-first': 401,
  'join-too-often': 429,
  'join-wrong-code': 403,
  'read-only': 403,
  'beyond-grant': 403,
  'no-network': 501,
  'no-seat': 404,
  'seat-not-yours': 403,
  'seat-in-order': 409,
  'seat-too-often': 429,
  'exercise-not-begun': 409,
  'exercise-over': 409,
  'archive-not-zip': 422,
  'archive-no-manifest': 422,
  'archive-newer': 422,
  'archive-too-large': 413,
  'archive-part-missing': 422,
  'archive-part-extra': 422,
  'archive-part-twice': 422,
  'archive-part-damaged': 422,
  'archive-part-wrong': 422,
  'archive-history': 422,
  'archive-events': 422,
  'archive-apart': 422,
  'archive-here': 409,
}

/** Why a request is not carried out: thrown anywhere behind the door, answered at the door. */
export class Refusal extends Error {
  override name = 'Refusal'
  readonly status: number

  constructor(
    readonly code: string,
    status: number,
    readonly sentence: string,
    readonly path: string,
    readonly extra: Readonly<Record<string, unknown>>,
  ) {
    super(`${code}: ${sentence}`)
    this.status = status
  }
}

/** @param path where in the request; @param extra further members of the answer beside `error` */
export function refusal(code: RefusalCode, values: TextValues = {}, path = '', extra: Record<string, unknown> = {}): Refusal {
  return new Refusal(code, STATUS[code], say(`server.${code}`, values), path, extra)
}

/** A refusal for what the document's own rules say against it; the issue travels along for the screen to word. */
export function refusalOfIssue(issue: Issue): Refusal {
  const path = typeof issue.values.path === 'string' ? issue.values.path : ''
  return new Refusal(issue.code, 422, sayIssue(issue, () => undefined, 'us'), path, { issue })
}
