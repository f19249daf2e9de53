'use client'

import { useCallback, useSyncExternalStore } from 'react'
import { getEventLog } from './event-desk'
import type { EventsView } from './event-log'

const loading: EventsView = { status: 'loading', events: [], unsent: new Set(), unkept: new Set(), isAway: false, refused: undefined }

/** The events of a log as this device knows them; loading until they come. */
export function useLogEvents(logId: string): EventsView {
  const subscribe = useCallback((listener: () => void) => getEventLog(logId).subscribe(listener), [logId])
  return useSyncExternalStore(subscribe, () => getEventLog(logId).view(), () => loading)
}
