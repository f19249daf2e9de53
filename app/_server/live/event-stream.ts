import { eventText, type StreamEvent } from '@/app/_live/event-text'

/** How often a stream says that it is there; whoever listens takes three missed ones for a connection that is gone. */
const BEAT_ms = 10_000
/** What may wait for a listener that does not keep up. Then it is cut off: it comes again and is told what it missed. */
const MOST_WAITING_bytes = 1024 * 1024

export type Outlet = { send(event: StreamEvent): void; close(): void }

/**
 * An answer that goes on: events as they come, and a beat with the station's time.
 *
 * @param signal of the request: aborted when the other side is gone
 * @param begin  sends what is to be sent at once, and returns how to stop
 * @param isGood asked at every beat; once it is not, the stream ends
 */
export function eventStream(signal: AbortSignal, begin: (outlet: Outlet) => Promise<() => void>, isGood: () => Promise<boolean> = async () => true): Response {
  const encoder = new TextEncoder()
  let end = (): void => undefined
  const body = new ReadableStream<Uint8Array>({
    async start(controller) {
      let isOver = false
      let stop: (() => void) | undefined
      const close = () => {
        if (isOver) return
        isOver = true
        clearInterval(timer)
        signal.removeEventListener('abort', close)
        stop?.()
        try { controller.close() } catch { /* The other side has closed it. */ }
      }
      const send = (event: StreamEvent) => {
        if (isOver) return
        controller.enqueue(encoder.encode(eventText(event)))
        if ((controller.desiredSize ?? 0) < -MOST_WAITING_bytes) close()
      }
      const beat = () => { send({ event: 'beat', data: JSON.stringify({ now_ms: Date.now() }) }) }
      const timer = setInterval(() => {
        beat()
        isGood().then((good) => { if (!good) close() }, close)
      }, BEAT_ms)
      timer.unref()
      end = close
      signal.addEventListener('abort', close)
      if (signal.aborted) return close()
      beat()
      try {
        const begun = await begin({ send, close })
        if (isOver) begun()
        else stop = begun
      } catch (error) {
        console.error(error)
        close()
      }
    },
    cancel: () => { end() },
  }, new ByteLengthQueuingStrategy({ highWaterMark: 64 * 1024 }))
  return new Response(body, { headers: { 'Content-Type': 'text/event-stream; charset=utf-8', 'Cache-Control': 'no-store, no-transform', 'X-Accel-Buffering': 'no' } })
}
