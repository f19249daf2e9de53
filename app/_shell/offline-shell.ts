/** How far this device could go without the station. */
export type ShellState =
  /** Not known yet, or being put in place. */
  | 'starting'
  /** Pages, and what was opened, work without the station. */
  | 'ready'
  /** As ready; and a newer version waits to be taken. */
  | 'update'
  /** The address is neither https nor this machine itself: browsers keep no app for such a one. */
  | 'insecure'
  /** The browser has no way to keep an app, or would not. */
  | 'unable'

let state: ShellState = 'starting'
let registration: ServiceWorkerRegistration | undefined
let isTaking = false
const listeners = new Set<() => void>()

export const shellState = (): ShellState => state
export const subscribeToShell = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

function become(next: ShellState): void {
  if (state === next) return
  state = next
  for (const listener of listeners) listener()
}

const LOOK_AGAIN_MS = 3_600_000

/** Puts the service worker in place and watches for its next version. Called once, in a browser. */
export async function startOfflineShell(): Promise<void> {
  if (!isSecureContext) return become('insecure')
  if (!('serviceWorker' in navigator)) return become('unable')
  const { serviceWorker } = navigator
  serviceWorker.addEventListener('controllerchange', () => {
    if (isTaking) location.reload()
    else look()
  })
  try {
    registration = await serviceWorker.register('/sw.js', { updateViaCache: 'none' })
  } catch {
    // While the app is being developed there is none, and with the server away the one there is stays.
    registration = await serviceWorker.getRegistration()
  }
  if (!registration) return become('unable')
  registration.addEventListener('updatefound', watch)
  watch()
  look()
  setInterval(() => void lookForUpdate(), LOOK_AGAIN_MS)
}

function watch(): void {
  registration?.installing?.addEventListener('statechange', look)
}

function look(): void {
  if (!registration) return
  if (registration.waiting && registration.active) become('update')
  else if (navigator.serviceWorker.controller) become('ready')
  else if (!registration.installing && !registration.active) become('unable')
}

/** Asks the station whether there is a newer version. */
export const lookForUpdate = async (): Promise<void> => {
  await registration?.update().catch(() => undefined)
  look()
}

/** Takes the version that waits; the page loads anew. What is unsent lies on the disk and stays there. */
export function takeUpdate(): void {
  isTaking = true
  registration?.waiting?.postMessage({ type: 'SKIP_WAITING' })
}
