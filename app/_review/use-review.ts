'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import { namesOf, type District, type FieldLog, type SiteEvent } from '@/lib/plan'
import type { EventsReview } from '@/lib/review'
import { useDistrict, useDocument, useLogEvents } from '../_client'
import { say, type NameOf } from '../_text'
import '../_text/areas/review'
import { getReviewDesk } from './review-desk'
import { readSiteEvents } from './read-site-events'

export type ReviewView = {
  readonly status: 'loading' | 'missing' | 'unreachable' | 'failed' | 'ready'
  readonly progressShare: number | undefined
  readonly log: FieldLog | undefined
  readonly district: District | undefined
  readonly events: readonly SiteEvent[]
  readonly review: EventsReview | undefined
  readonly names: NameOf
}

/** A log with its review, worked out off the page once its events are there. */
export function useReview(districtId: string, logId: string): ReviewView {
  const view = useDocument<FieldLog>(logId)
  const district = useDistrict(districtId).doc
  const kept = useLogEvents(logId).events
  const [found, setFound] = useState<{ log: FieldLog; events: readonly SiteEvent[]; review: EventsReview }>()
  const [failure, setFailure] = useState<'unreachable' | 'failed'>()
  const [progressShare, setProgress] = useState<number>()
  const log = view.doc
  // Only a log without a plan asks the live district who is who, so other changes of it ask for no new review.
  const asked = log?.planned ? undefined : district
  useEffect(() => {
    if (!log || (!log.planned && !asked)) return undefined
    const stop = new AbortController()
    const run = async (): Promise<void> => {
      const events = await readSiteEvents(log.id)
      if (stop.signal.aborted) return
      if (!events) {
        setFailure('unreachable')
        return
      }
      const review = await getReviewDesk().review(log, events, asked, (share) => { if (!stop.signal.aborted) setProgress(share) })
      if (stop.signal.aborted) return
      setFound({ log, events, review })
      setFailure(undefined)
      setProgress(undefined)
    }
    run().catch(() => { if (!stop.signal.aborted) setFailure('failed') })
    return () => { stop.abort() }
    // What other devices send while it is open asks for a new review.
  }, [log, asked, kept])

  const known = useMemo(() => namesOfLog(log, district), [log, district])
  const names: NameOf = useCallback((id) => known.get(id), [known])
  const isMissing = view.status !== 'loading' && !log
  return {
    status: isMissing ? 'missing' : failure ?? (found ? 'ready' : 'loading'),
    progressShare, log, district, events: found?.events ?? [], review: found?.review, names,
  }
}

/** What the items of a log are called: as planned, in the district, and those that the log alone knows. */
export function namesOfLog(log: FieldLog | undefined, district: District | undefined): Map<string, string> {
  const names = new Map<string, string>(log?.planned ? namesOf(log.planned) : [])
  for (const { id, name } of [...(district?.apparatus ?? []), ...(log?.units ?? []), ...(log?.places ?? [])]) if (!names.has(id)) names.set(id, name)
  for (const [id, key] of [['dump', 'review.place.dump'], ['fill', 'review.place.fill']] as const) names.set(id, say(key))
  return names
}
