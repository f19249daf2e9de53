import type { Client } from './client'
import { indexedOutbox } from './indexed-outbox'
import { keptTransport } from './kept-transport'
import { indexedShelf, type Shelf } from './shelf'
import { httpTransport } from './http-transport'
import { Client as DocumentClient } from './client'
import { mintId } from './mint-id'
import type { Outbox } from './outbox'

const CHANNEL = 'millrace-documents'
const POLL_MS = 8_000

let shared: Client | undefined
let shelf: Shelf | undefined
let outbox: Outbox | undefined

/** What this device has of the server's documents. Only in a browser. */
export const getShelf = (): Shelf => (shelf ??= indexedShelf())

/** What this device holds for the server. Only in a browser. */
export const getOutbox = (): Outbox => (outbox ??= indexedOutbox())

/** The client of this window. Only in a browser. */
export function getClient(): Client {
  shared ??= startClient()
  return shared
}

/** Wires a client to the browser: other windows, the way out, the network coming back, a slow poll for other devices. */
function startClient(): Client {
  const channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel(CHANNEL) : undefined
  const [outbox, shelf] = [getOutbox(), getShelf()]
  const client: DocumentClient = new DocumentClient({
    transport: keptTransport({ server: httpTransport(), shelf, outbox, refused: (created) => client.refuse(created) }),
    outbox,
    shelf,
    actor: `window ${mintId().slice(0, 8)}`,
    announce: (docId) => channel?.postMessage({ docId }),
  })
  channel?.addEventListener('message', (message: MessageEvent<{ docId?: string }>) => {
    const { docId } = message.data
    void (docId ? client.pull(docId) : client.refreshList())
  })
  const look = () => {
    if (document.visibilityState === 'visible') void client.pull()
  }
  addEventListener('online', () => void client.flush().then(() => client.pull()))
  addEventListener('focus', look)
  document.addEventListener('visibilitychange', () => (document.visibilityState === 'hidden' ? void client.flush() : look()))
  addEventListener('pagehide', () => client.sendLast())
  addEventListener('beforeunload', (event) => {
    if (client.saveState().unkeptCount > 0) event.preventDefault()
  })
  setInterval(look, POLL_MS)
  void client.resume()
  return client
}
