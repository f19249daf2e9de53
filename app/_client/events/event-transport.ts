import type { SiteEvent } from '@/lib/plan'
import { Unreachable } from '../transport'

export type EventPage = { events: readonly SiteEvent[]; last: number; total: number; isDeleted: boolean }

/** What the station says of events that were sent: all taken, or none and why. `isMissing`: it does not have the log, or not yet. */
export type SentEvents = { kind: 'taken' } | { kind: 'refused'; sentence: string; isMissing: boolean; isAboutEvents: boolean }

/** The station, as far as the events of logs go. Rejects with `Unreachable` when no answer came. */
export type EventTransport = {
  send(logId: string, events: readonly SiteEvent[]): Promise<SentEvents>
  since(logId: string, after: number): Promise<EventPage | 'missing'>
}

const LONGEST_MS = 20_000
/** Answers that say nothing of the events themselves. */
const PASSING = [401, 408, 425, 429, 500, 502, 503, 504]

export function httpEventTransport(root = '/api', fetcher: typeof fetch = (input, init) => fetch(input, init)): EventTransport {
  const ask = async (logId: string, query: string, init?: RequestInit): Promise<Response> => {
    const response = await fetcher(`${root}/documents/${encodeURIComponent(logId)}/events${query}`, { cache: 'no-store', signal: AbortSignal.timeout(LONGEST_MS), ...init }).catch((error: unknown) => {
      throw new Unreachable(String(error))
    })
    if (PASSING.includes(response.status)) throw new Unreachable(String(response.status))
    return response
  }
  return {
    async send(logId, events) {
      const response = await ask(logId, '', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ events }) })
      if (response.ok) return { kind: 'taken' }
      const { error } = (await read(response)) as { error?: { sentence?: string } }
      return { kind: 'refused', sentence: error?.sentence ?? String(response.status), isMissing: response.status === 404, isAboutEvents: [400, 409, 413, 422].includes(response.status) }
    },
    async since(logId, after) {
      const response = await ask(logId, `?after=${after}`)
      return response.ok ? ((await read(response)) as EventPage) : 'missing'
    },
  }
}

/** A body that is not what it should be comes from something between here and the station. */
async function read(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch (error) {
    throw new Unreachable(String(error))
  }
}
