/** Waiting, as something a test can take in its own hands. */
export type Timers = { after(wait_ms: number, run: () => void): () => void }

export const realTimers: Timers = {
  after(wait_ms, run) {
    const handle = setTimeout(run, wait_ms)
    return () => clearTimeout(handle)
  },
}
