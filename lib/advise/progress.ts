/** How far a piece of work is, 0 to 1; handed out between two simulations, so that whoever drives it may stop there. */
export type Progress = { readonly doneShare: number }

/** Drives a piece of work to its end without stopping. */
export function finish<R>(work: Generator<unknown, R>): R {
  for (;;) {
    const step = work.next()
    if (step.done) return step.value
  }
}
