'use client'

import { useEffect, useMemo, useState } from 'react'
import { DEPENDABLE_SHARE } from '@/lib/doubt'
import type { District, FieldLog } from '@/lib/plan'
import { promisedFlow_gpm, type EventsReview, type PromiseKept } from '@/lib/review'
import { useDistrict, useDocumentList, useDocuments } from '../_client'
import { getReviewDesk } from './review-desk'
import { readSiteEvents } from './read-site-events'

/** A log with its review, and what its plan promised. */
export type Reviewed = { readonly log: FieldLog; readonly review: EventsReview; readonly promise?: PromiseKept }

export type AllReviews = { readonly status: 'loading' | 'unreachable' | 'ready'; readonly doneShare: number; readonly reviewed: readonly Reviewed[]; readonly failedCount: number }

const MOST_LOGS = 60

/** Every log of a district with its review, as they come, the latest day first. */
export function useAllReviews(districtId: string): AllReviews {
  const list = useDocumentList()
  const district = useDistrict(districtId).doc
  const ids = list.entries.filter(({ kind, districtId: own, deletedAt }) => kind === 'log' && own === districtId && deletedAt === undefined).slice(0, MOST_LOGS).map(({ id }) => id)
  const logs = useDocuments<FieldLog>(ids)
  const [found, setFound] = useState<ReadonlyMap<FieldLog, Reviewed | 'failed'>>(new Map())
  useEffect(() => {
    if (!district) return undefined
    const stop = new AbortController()
    const run = async (): Promise<void> => {
      for (const log of logs) {
        const one = await reviewedOnce(log, district)
        if (stop.signal.aborted) return
        setFound((before) => new Map(before).set(log, one))
      }
    }
    void run()
    return () => { stop.abort() }
  }, [logs, district])
  return useMemo(() => {
    const done = logs.flatMap((log) => found.get(log) ?? [])
    const reviewed = done.filter((one) => one !== 'failed').sort((a, b) => (a.log.date < b.log.date ? 1 : -1))
    const isListed = list.status === 'ready' && logs.length === ids.length
    const isDone = isListed && done.length === logs.length
    return {
      status: isDone ? 'ready' : list.status === 'unreachable' ? 'unreachable' : 'loading',
      doneShare: ids.length === 0 ? 1 : done.length / ids.length, reviewed, failedCount: done.length - reviewed.length,
    }
  }, [logs, found, list.status, ids.length])
}

const made = new WeakMap<FieldLog, Promise<Reviewed | 'failed'>>()

/** A log is reviewed once in a window as long as it stays as it is. */
function reviewedOnce(log: FieldLog, district: District): Promise<Reviewed | 'failed'> {
  const asked = made.get(log) ?? reviewOf(log, district).catch(() => 'failed' as const)
  made.set(log, asked)
  return asked
}

async function reviewOf(log: FieldLog, district: District): Promise<Reviewed | 'failed'> {
  const desk = getReviewDesk()
  const events = await readSiteEvents(log.id)
  if (!events) return 'failed'
  const review = await desk.review(log, events, log.planned ? undefined : district, () => undefined)
  if (!log.planned || review.held_gpm === undefined) return { log, review }
  const nights_gpm = await desk.nights(log.planned)
  if (nights_gpm.length === 0) return { log, review }
  const promised_gpm = promisedFlow_gpm(nights_gpm, DEPENDABLE_SHARE)
  const { held_gpm, needed_gpm } = review
  const isUntested = held_gpm < promised_gpm && needed_gpm !== undefined && needed_gpm < promised_gpm && held_gpm >= NEED_MET * needed_gpm
  return { log, review, promise: { logId: log.id, nights_gpm, held_gpm, isUntested } }
}

/** The fire ground that asked for less and had it, but for what a gauge may be off. */
const NEED_MET = 0.95
