import type { Unsent } from './unsent'

/** Edits that go to the server in one request, all or none of them: enough that a file of places is stored in a few. */
export const EDITS_A_REQUEST = 250

/** Letters of them together: far below what the server reads of one request. */
const LETTERS_A_REQUEST = 400_000

/**
 * The first of the queue that go together, in their order; at least one while there are any.
 *
 * @param most how many at most, 1 or more
 */
export function nextBatch(unsent: readonly Unsent[], most: number): readonly Unsent[] {
  const batch: Unsent[] = []
  let letters = 0
  for (const item of unsent) {
    letters += JSON.stringify(item.edit).length
    if (batch.length > 0 && (batch.length >= most || letters > LETTERS_A_REQUEST)) break
    batch.push(item)
  }
  return batch
}
