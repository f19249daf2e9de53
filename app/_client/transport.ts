import type { Issue } from '@/lib/issue'
import type { DocumentKind, Edit, EditBody, EditableDocument } from '@/lib/plan'

/** A line of the list of documents. */
export type DocumentEntry = {
  id: string
  kind: DocumentKind
  name: string
  districtId?: string
  sequence: number
  updatedAt?: string
  deletedAt?: string
}

/** `isKept`: not the server's own answer, but what this device had of it. */
export type LoadedDocument = { doc: EditableDocument; sequence: number; isDeleted: boolean; isKept?: true }

/** An edit the server has put in its place in the document's history. */
export type SequencedEdit = { id: string; sequence: number; body: EditBody; touches: readonly string[]; by: string; at: string }

/**
 * What the server made of the edits of one request: it takes all of them or none. `history` holds every edit after the
 * oldest base that they were sent with, in order; when they were applied, themselves too.
 */
export type SendAnswer =
  | { kind: 'applied'; history: readonly SequencedEdit[] }
  | { kind: 'overlap'; history: readonly SequencedEdit[] }
  | { kind: 'refused'; issue: Issue }

/** The server as the client sees it. Every call rejects with `Unreachable` when no answer came. */
export type Transport = {
  list(options?: { withDeleted?: boolean }): Promise<DocumentEntry[]>
  load(docId: string): Promise<LoadedDocument | Issue>
  /** @param label what the act is called, for where it has to wait */
  create(doc: EditableDocument, label?: string): Promise<LoadedDocument | Issue>
  /** @param edits of one document, in the order they were made; one or more */
  send(edits: readonly Edit[]): Promise<SendAnswer>
  /** Edits after a sequence number, in order, and whether the document has been put away. */
  since(docId: string, sequence: number): Promise<{ history: readonly SequencedEdit[]; isDeleted: boolean }>
  remove(docId: string): Promise<Issue | undefined>
  restore(docId: string): Promise<Issue | undefined>
  /** Sends edits while the page goes away: nobody waits for the answer. */
  sendLast(docId: string, edits: readonly Edit[]): void
}

/** No answer: the server is away, or too busy to say anything useful. The same call may be made again. */
export class Unreachable extends Error {
  override name = 'Unreachable'
}
