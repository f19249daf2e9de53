import type { SiteEvent } from '@/lib/plan'
import { askStation, asJson, readAnswer } from '../ask-station'

export type EventPage = { events: readonly SiteEvent[]; last: number; total: number; isDeleted: boolean }

/** What the station says of events that were sent: all taken, or none and why. `isMissing`: it does not have the log, or not yet. */
export type SentEvents = { kind: 'taken' } | { kind: 'refused'; sentence: string; isMissing: boolean; isAboutEvents: boolean }

/** The station, as far as the events of logs go. Rejects with `Unreachable` when no answer came. */
export type EventTransport = {
  send(logId: string, events: readonly SiteEvent[]): Promise<SentEvents>
  since(logId: string, after: number): Promise<EventPage | 'missing'>
}

export function httpEventTransport(root = '/api', fetcher: typeof fetch = (input, init) => fetch(input, init)): EventTransport {
  const ask = (logId: string, query: string, init?: RequestInit) => askStation(`${root}/documents/${encodeURIComponent(logId)}/events${query}`, init, fetcher)
  return {
    async send(logId, events) {
      const response = await ask(logId, '', asJson({ events }))
      if (response.ok) return { kind: 'taken' }
      const { error } = (await readAnswer(response)) as { error?: { sentence?: string } }
      return { kind: 'refused', sentence: error?.sentence ?? String(response.status), isMissing: response.status === 404, isAboutEvents: [400, 409, 413, 422].includes(response.status) }
    },
    async since(logId, after) {
      const response = await ask(logId, `?after=${after}`)
      return response.ok ? ((await readAnswer(response)) as EventPage) : 'missing'
    },
  }
}
