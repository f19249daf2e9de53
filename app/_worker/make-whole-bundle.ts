'use client'

import { issue, type Issue } from '@/lib/issue'
import type { Bundle } from '@/lib/plan'
import type { BundleService } from './bundle.worker'
import { inOneOffWorker } from './one-off-worker'
import type { WholeBundle } from './whole-bundle'

/** A plan with its ways and the ground under its hose lays, as far as roads and elevation can be read here; off the page. */
export const makeWholeBundle = (bundle: Bundle): Promise<WholeBundle | Issue> =>
  inOneOffWorker<BundleService, WholeBundle>(() => new Worker(new URL('./bundle.worker.ts', import.meta.url)), issue('worker-failed', 'block'), undefined, (service) => service.make(bundle))
