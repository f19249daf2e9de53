import type { AnsweredPlan, SheetRef } from '@/lib/book'
import { issue, type Issue } from '@/lib/issue'
import { bundleFromDocuments } from '../_client'
import { getDoubtPool } from '../_worker/get-doubt-pool'
import { inOneOffWorker } from '../_worker/one-off-worker'
import { withProgress } from '../_worker/with-progress'
import type { BookOrder, BookService, BookTold, MadeBook } from './book-service'

/** What is to be printed; its plans are yet to be answered. */
export type PrintOrder = Omit<BookOrder, 'answered'>

/** What is being done, and how far: each stage from 0 to 1. */
export type PrintProgress = { readonly stage: 'answering' | 'nights' | 'setting' | 'writing'; readonly share: number; readonly name: string }

/** Ids of the plans whose sheets are asked for. */
const plansOf = (refs: readonly SheetRef[]): ReadonlySet<string> => new Set(refs.flatMap((ref) => (ref.kind === 'plan' || ref.kind === 'fill' || ref.kind === 'dump' ? [ref.planId] : [])))

/**
 * Prints sheets to a file on this device: the plans are answered, their nights drawn, the sheets set. Needs no network where the
 * district is on the device.
 *
 * @returns the file, or the issue that stopped it: `printing-stopped` when it was given up
 */
export function printBook(order: PrintOrder, { signal, onProgress }: { readonly signal: AbortSignal; readonly onProgress: (progress: PrintProgress) => void }): Promise<MadeBook | Issue> {
  const { district, plans, refs } = order
  const asked = plansOf(refs)
  const wanted = plans.filter(({ id }) => asked.has(id))
  return inOneOffWorker<BookService, MadeBook>(
    () => new Worker(new URL('./book.worker.ts', import.meta.url)), issue('printing-stopped', 'note'), signal,
    async (service) => {
      const answered: AnsweredPlan[] = []
      for (const [i, plan] of wanted.entries()) {
        onProgress({ stage: 'answering', share: i / wanted.length, name: plan.name })
        const found = await service.answer(bundleFromDocuments(district, plan))
        answered.push(await withNights(found, signal, (share) => { onProgress({ stage: 'nights', share: (i + share) / wanted.length, name: plan.name }) }))
        if (signal.aborted) break
      }
      return withProgress(({ stage, done, of, title }: BookTold) => { onProgress({ stage, share: done / of, name: title }) }, async (tell) => service.print({ ...order, answered }, tell))
    },
  )
}

/** The answer with what can be depended on; without it where the plan is blocked or the nights cannot be drawn, and the sheet says so. */
async function withNights({ bundle, result }: AnsweredPlan, signal: AbortSignal, onProgress: (share: number) => void): Promise<AnsweredPlan> {
  if (result.sustainable_gpm === null) return { bundle, result }
  const doubt = await getDoubtPool().whole(bundle, { signal, onProgress }).catch(() => undefined)
  return doubt ? { bundle, result: { ...result, dependable: doubt.dependable } } : { bundle, result }
}
