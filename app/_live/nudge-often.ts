import type { LiveStream } from './live-stream'

/** Takes a broken stream up again at once when the network comes back or the page is looked at. @returns how to stop */
export function nudgeOften(stream: LiveStream): () => void {
  const nudge = () => { if (document.visibilityState === 'visible') stream.nudge() }
  addEventListener('online', nudge)
  addEventListener('pageshow', nudge)
  document.addEventListener('visibilitychange', nudge)
  return () => {
    removeEventListener('online', nudge)
    removeEventListener('pageshow', nudge)
    document.removeEventListener('visibilitychange', nudge)
  }
}
