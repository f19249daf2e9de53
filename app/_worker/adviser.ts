import { proxy, wrap } from 'comlink'
import type { AdviceService } from './advice-service'
import { guardOf } from './guard-worker'
import { onFirstCall } from './on-first-call'
import { withProgress } from './with-progress'

/** The adviser's worker as the page sees it. */
export type Adviser = AdviceService

function startAdviser(): Adviser {
  const worker = new Worker(new URL('./advice.worker.ts', import.meta.url))
  const port = wrap<AdviceService>(worker)
  const guard = guardOf(worker)
  return {
    advise: (bundle, onPart) => guard(port.advise(bundle, proxy(onPart))),
    request: (bundle, ask, onProgress) => guard(withProgress(onProgress, async (tell) => port.request(bundle, ask, tell))),
    stop: () => guard(port.stop()),
  }
}

/** The adviser of this window; its worker starts with the first call. Only in a browser. */
export const getAdviser = onFirstCall(startAdviser)
