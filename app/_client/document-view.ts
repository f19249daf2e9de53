import type { Issue } from '@/lib/issue'
import type { EditableDocument } from '@/lib/plan'
import type { Conflict } from './conflict'

export type Sending = 'idle' | 'queued' | 'sending' | 'waiting'

/** What a screen reads of one document. The same object until something changes. */
export type DocumentView<D extends EditableDocument = EditableDocument> = {
  status: 'loading' | 'ready' | 'deleted' | 'missing' | 'unreachable'
  doc?: D
  sequence: number
  unsentCount: number
  /** Of those unsent, how many are in this window alone: not yet on the device's disk, or it would not take them. */
  unkeptCount: number
  conflicts: readonly Conflict[]
  sending: Sending
  /** The last talk with the server came to nothing: this is what the device has. */
  isAway: boolean
  /** Why it could not be had. */
  issue?: Issue
}

/** A document of which nothing has come yet. */
export const LOADING: DocumentView = { status: 'loading', sequence: 0, unsentCount: 0, unkeptCount: 0, conflicts: [], sending: 'idle', isAway: false }
