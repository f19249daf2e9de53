import { getClient } from '../live'
import { mintId } from '../mint-id'
import { indexedEventDisk, type EventDisk } from './event-disk'
import { EventLog } from './event-log'
import { httpEventTransport } from './event-transport'

const CHANNEL = 'millrace-events'
const POLL_MS = 8000
const DEVICE_KEY = 'millrace-log-device'

let disk: EventDisk | undefined
let channel: BroadcastChannel | undefined
const logs = new Map<string, EventLog>()

/** Where this device keeps events. Only in a browser. */
export const getEventDisk = (): EventDisk => (disk ??= indexedEventDisk())

/** The events of a log in this window; reading begins the first time it is asked for. Only in a browser. */
export function getEventLog(logId: string): EventLog {
  const there = logs.get(logId)
  if (there) return there
  const log: EventLog = new EventLog(logId, {
    disk: getEventDisk(), transport: httpEventTransport(),
    // A log made here is sent with the list of documents.
    sendLog: () => getClient().refreshList(),
    kept: () => channel?.postMessage({ logId }),
  })
  logs.set(logId, log)
  void log.load().then(() => log.sync())
  return log
}

/** Takes up what earlier visits left unsent, of any log, and watches for the network. Called once, in a browser. */
export async function startEventDesk(): Promise<void> {
  channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel(CHANNEL) : undefined
  channel?.addEventListener('message', ({ data }: MessageEvent<{ logId: string }>) => { void logs.get(data.logId)?.load() })
  const all = () => { for (const log of logs.values()) void log.sync() }
  const look = () => { if (document.visibilityState === 'visible') for (const log of logs.values()) if (log.isWatched) void log.sync() }
  addEventListener('online', all)
  addEventListener('focus', look)
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') all(); else look() })
  addEventListener('beforeunload', (event) => { if ([...logs.values()].some((log) => log.view().unkept.size > 0)) event.preventDefault() })
  setInterval(look, POLL_MS)
  for (const logId of await getEventDisk().unsentLogIds().catch(() => [])) getEventLog(logId)
}

let device: string | undefined

/** This device’s own name in logs: drawn at random once, and no more than that. Only in a browser. */
export function logDevice(): string {
  try {
    device ??= localStorage.getItem(DEVICE_KEY) ?? undefined
    if (device === undefined) localStorage.setItem(DEVICE_KEY, (device = mintId().slice(0, 8)))
  } catch {
    device ??= mintId().slice(0, 8)
  }
  return device
}
