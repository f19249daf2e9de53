import type { Progress } from '@/lib/advise'

/** Work goes on this long before messages are taken up. */
const STINT_MS = 40

export type DriveOptions<P> = {
  /** False once a newer question or a stop has come. */
  readonly isCurrent: () => boolean
  /** Lets messages that have come in be taken up first. */
  readonly turn: () => Promise<void>
  /** A clock in milliseconds. */
  readonly now: () => number
  readonly onProgress: (progress: P) => void
}

/** Drives a piece of work to its end in stints, between which messages are taken up. @returns undefined once it is no longer wanted */
export async function driveWork<P extends Progress, R>(work: Generator<P, R>, { isCurrent, turn, now, onProgress }: DriveOptions<P>): Promise<{ result: R } | undefined> {
  let since = now()
  for (;;) {
    const step = work.next()
    if (step.done) return isCurrent() ? { result: step.value } : undefined
    if (now() - since < STINT_MS) continue
    onProgress(step.value)
    await turn()
    if (!isCurrent()) return undefined
    since = now()
  }
}
