import { issue } from '@/lib/issue'
import type { DrivenWay } from '@/lib/exchange'
import type { Bundle } from '@/lib/plan'
import { inOneOffWorker } from '../_worker/one-off-worker'
import type { ExchangeService } from './exchange.worker'
import { startWorker } from './use-read-file'

type Ways = ReadonlyMap<string, readonly DrivenWay[]>

/** Ways that plans drive over the roads, found off the page; none where the roads cannot be fetched. */
export async function findWays(bundles: readonly Bundle[]): Promise<Ways> {
  const found = await inOneOffWorker<ExchangeService, Ways>(startWorker, issue('exchange-aborted', 'block'), undefined, (service) => service.ways([...bundles]))
  return 'code' in found ? new Map() : found
}
