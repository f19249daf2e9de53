import type { Timers } from '@/app/_client/timers'

/** Timers that run when told to. */
export function manualTimers(): Timers & { waits: number[]; runAll(): void } {
  let due: { wait_ms: number; run: () => void }[] = []
  return {
    after(wait_ms, run) {
      const item = { wait_ms, run }
      due.push(item)
      return () => {
        due = due.filter((other) => other !== item)
      }
    },
    get waits() {
      return due.map(({ wait_ms }) => wait_ms)
    },
    runAll() {
      const now = due
      due = []
      for (const { run } of now) run()
    },
  }
}
