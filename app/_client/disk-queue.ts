import type { Outbox } from './outbox'
import type { Replica } from './replica'
import type { Unsent } from './unsent'

/** The outbox as one document uses it: knows which of its edits are on the device's disk, and which in this window alone. */
export class DiskQueue {
  readonly #docId: string
  readonly #outbox: Outbox
  readonly #unkept = new Set<string>()
  readonly #changed: () => void

  /** @param changed called when something has come to the disk */
  constructor(docId: string, outbox: Outbox, changed: () => void) {
    this.#docId = docId
    this.#outbox = outbox
    this.#changed = changed
  }

  /** Of these edits, how many are not on the disk, or not yet. */
  unkeptCount = (unsent: readonly Unsent[]): number => unsent.filter(({ edit }) => this.#unkept.has(edit.id)).length

  keep(unsent: readonly Unsent[]): void {
    for (const { edit } of unsent) this.#unkept.add(edit.id)
    void this.#outbox.keep(unsent).then(() => {
      for (const { edit } of unsent) this.#unkept.delete(edit.id)
      this.#changed()
    }, () => undefined)
  }

  keepConflicts({ conflicts }: Replica): Promise<void> {
    return this.#outbox.keepConflicts(this.#docId, conflicts).catch(() => undefined)
  }

  /** What a person has to choose between is on the disk before the edits it came from leave it. */
  async settle(replica: Replica, before: Replica | undefined, gone: readonly string[]): Promise<void> {
    if (replica.conflicts !== before?.conflicts) await this.keepConflicts(replica)
    if (gone.length > 0) await this.#outbox.forget(gone).catch(() => undefined)
    for (const id of gone) this.#unkept.delete(id)
  }
}
