import { wrap } from 'comlink'
import type { DoubtAnswer } from '@/lib/doubt'
import type { Bundle } from '@/lib/plan'
import { DoubtPool } from './doubt-pool'
import type { DoubtService } from './doubt-service'
import { guardOf } from './guard-worker'
import { quietWatch } from './until-quiet'

const QUIET_MS = 400
/** More workers than this only cost memory. */
const MOST_WORKERS = 8

let shared: DoubtPool | undefined

/** The pool of this window, one worker a processor; they start with the first call. Only in a browser. */
export function getDoubtPool(): DoubtPool {
  shared ??= new DoubtPool(
    Array.from({ length: Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1)) }, startWorker),
    quietWatch(window, QUIET_MS),
  )
  return shared
}

/** Nights that are at hand of this very plan, since another page of it has had them; no worker is started for it. */
export const findKeptDoubt = (bundle: Bundle): DoubtAnswer | undefined => shared?.kept(bundle)

function startWorker(): DoubtService {
  const worker = new Worker(new URL('./doubt.worker.ts', import.meta.url))
  const port = wrap<DoubtService>(worker)
  const guard = guardOf(worker)
  return {
    prepare: (bundle) => guard(port.prepare(bundle)),
    take: (model) => guard(port.take(model)),
    sample: (seed, from, count) => guard(port.sample(seed, from, count)),
    sum: (samples, seed) => guard(port.sum([...samples], seed)),
  }
}
