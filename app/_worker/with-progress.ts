import { proxy, type ProxyMarked } from 'comlink'

type Tell<A extends unknown[]> = (...told: A) => void

/**
 * Calls a worker that tells meanwhile how far it is. What it tells comes by a way of its own and may arrive after the
 * result: from then on it is passed over, or a screen that is done would be at work again, and for good.
 *
 * @param call gets what the worker is to tell by
 */
export async function withProgress<A extends unknown[], R>(onProgress: Tell<A> | undefined, call: (tell: Tell<A> & ProxyMarked) => Promise<R>): Promise<R> {
  let isOver = false
  try {
    return await call(proxy((...told: A) => { if (!isOver) onProgress?.(...told) }))
  } finally {
    isOver = true
  }
}
