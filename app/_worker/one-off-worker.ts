import { wrap, type Remote } from 'comlink'
import { issue, type Issue } from '@/lib/issue'

/**
 * One piece of work in a worker of its own: giving up ends the worker, and so does the end of the work.
 *
 * @param start   makes the worker
 * @param aborted the answer when it is given up
 * @returns what the work gave, or the one issue that stopped it
 */
export async function inOneOffWorker<S, T>(start: () => Worker, aborted: Issue, signal: AbortSignal | undefined, work: (service: Remote<S>) => PromiseLike<T>): Promise<T | Issue> {
  const worker = start()
  try {
    return await Promise.race([
      work(wrap<S>(worker)),
      new Promise<Issue>((resolve) => signal?.addEventListener('abort', () => { resolve(aborted) }, { once: true })),
      new Promise<Issue>((resolve) => worker.addEventListener('error', ({ message }) => { resolve(issue('worker-failed', 'block', [], { reason: message })) }, { once: true })),
    ])
  } finally {
    worker.terminate()
  }
}
