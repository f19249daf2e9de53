import { wrap } from 'comlink'
import { guardOf } from './guard-worker'
import { onFirstCall } from './on-first-call'
import type { RefereeService } from './referee-service'
import { withProgress } from './with-progress'

function start(): RefereeService {
  const worker = new Worker(new URL('./referee.worker.ts', import.meta.url))
  const port = wrap<RefereeService>(worker)
  const guard = guardOf(worker)
  return {
    closures: (bundle, closed) => guard(port.closures(bundle, closed)),
    change: (bundle, edits, closed) => guard((async () => port.change(bundle, edits, closed))()),
    best: (bundle, facts, to_s, onProgress) => guard(withProgress(onProgress, async (tell) => port.best(bundle, facts, to_s, tell))),
    stop: () => guard(port.stop()),
  }
}

/** The worker of exercises of this window; it starts with the first call. Only in a browser. */
export const getReferee = onFirstCall(start)
