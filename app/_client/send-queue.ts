import { EDITS_A_REQUEST, nextBatch } from './next-batch'
import { conflictFromHistory, receive, withdraw, type Received, type Replica } from './replica'
import type { SequencedEdit, Transport } from './transport'
import type { Unsent } from './unsent'

/** A document whose edits are sent, as it stands at each moment: more may be made while an answer is waited for. */
export type SentFrom = {
  replica(): Replica | undefined
  /** False once it is put away: nothing more is sent. */
  isOpen(): boolean
  /** Something goes to the server. */
  begin(): void
  take(received: Received): void
  /** The server has put it away. */
  deleted(): void
}

/**
 * Sends what is unsent of a document, many edits at a time. The server takes all of a request or none, so where it will
 * not, fewer go at once, until the one that it means stands alone.
 *
 * @throws Unreachable while the server does not answer
 */
export async function sendQueue(transport: Pick<Transport, 'send'>, from: SentFrom): Promise<void> {
  let most = EDITS_A_REQUEST
  while (from.isOpen()) {
    const batch = nextBatch(from.replica()?.unsent ?? [], most)
    const [next] = batch
    if (!next) return
    from.begin()
    const answer = await transport.send(batch.map(({ edit }) => edit))
    const replica = from.replica()
    if (!replica) return
    if (answer.kind === 'refused' && answer.issue.code === 'document-deleted') return from.deleted()
    if (answer.kind === 'refused' && batch.length > 1) {
      most = Math.ceil(batch.length / 2)
      continue
    }
    if (answer.kind === 'refused') {
      from.take({ ...withdraw(replica, next.edit.id), refused: [{ unsent: next, issue: answer.issue }] })
      continue
    }
    from.take(receive(replica, answer.history))
    const left = batch.filter((item) => from.replica()?.unsent.some(({ edit }) => edit.id === item.edit.id))
    if (answer.kind === 'overlap' && batch.length > 1) {
      // What was new in the history may have taken out of the queue what overlapped; else it is looked for.
      if (left.length === batch.length) most = Math.ceil(batch.length / 2)
      continue
    }
    for (const item of left) {
      const held = from.replica()
      if (held) from.take(unexplained(held, item, answer.kind, answer.history))
    }
    most = Math.min(EDITS_A_REQUEST, most * 2)
  }
}

/** The answer did not take the edit out of the queue: the server knows of it, or of an overlap, from before. */
const unexplained = (replica: Replica, { edit }: Unsent, kind: 'applied' | 'overlap', history: readonly SequencedEdit[]): Received =>
  (kind === 'overlap' ? conflictFromHistory(replica, edit.id, history) : withdraw(replica, edit.id))
