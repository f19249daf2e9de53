import { CacheFirst, Serwist, StaleWhileRevalidate, type SerwistPlugin } from 'serwist'
import { DATA_CACHE, ICON_CACHE, pageCacheOf } from './caches'
import { findPage, keptAddress, pages, withIds } from './pages'

declare const self: ServiceWorkerGlobalScope

/** Put in when this file is bundled: the build it belongs to, and every file of that build that a page may load. */
declare const __BUILD__: string
declare const __FILES__: readonly string[]

/** A server that says nothing for this long is out of reach, as far as opening a page goes. */
const PATIENCE_MS = 2500
/** Answers of what stands before a server that is away. */
const AWAY = [502, 503, 504]

const PAGE_CACHE = pageCacheOf(__BUILD__)

const onlyWhole: SerwistPlugin = { cacheWillUpdate: async ({ response }) => (response.status === 200 ? response : null) }

/**
 * A worker's address is that of the answer it came by, and a kept answer has lost what stood after the `#`,
 * where the framework tells a worker what to load. An answer without an address leaves the worker its own.
 */
const withoutAddress: SerwistPlugin = {
  handlerWillRespond: async ({ request, response }) =>
    request.destination === 'worker' ? new Response(response.body, { status: response.status, headers: response.headers }) : response,
}

const serwist = new Serwist({
  precacheEntries: __FILES__.map((url) => ({ url, revision: null })),
  precacheOptions: { cleanupOutdatedCaches: true, plugins: [withoutAddress] },
  clientsClaim: true,
  // A new version waits until the user takes it: a plan may be half typed.
  skipWaiting: false,
  disableDevLogs: true,
  runtimeCaching: [
    { matcher: ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate', handler: ({ request }) => openPage(request) },
    // Inner parts of a page; when they cannot be had, the framework opens the page anew, which is kept.
    { matcher: ({ request, url, sameOrigin }) => sameOrigin && (request.headers.has('RSC') || url.searchParams.has('_rsc')), handler: ({ request }) => askServer(request) },
    { matcher: ({ url, sameOrigin }) => sameOrigin && /^\/(icons?[./]|apple-icon|manifest\.webmanifest)/.test(url.pathname), handler: new StaleWhileRevalidate({ cacheName: ICON_CACHE, plugins: [onlyWhole] }) },
    // What lies under a hash never changes.
    { matcher: ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith('/api/blobs/'), handler: new CacheFirst({ cacheName: DATA_CACHE, plugins: [onlyWhole] }) },
  ],
})

/** Pages are asked for while this version is put in place, so that it works without the network from its first hour. */
async function keepPages(): Promise<void> {
  const cache = await caches.open(PAGE_CACHE)
  for (const page of pages) {
    const response = await fetch(keptAddress(page), { cache: 'reload', headers: { Accept: 'text/html' } })
    if (!response.ok || response.redirected) throw new Error(`page ${page} answers ${response.status}`)
    await cache.put(keptAddress(page), response)
  }
}

async function dropOldPages(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(pageCacheOf('')) && name !== PAGE_CACHE) await caches.delete(name)
}

/** @returns no answer in time, or none of the server's own, is a network error */
async function askServer(request: Request): Promise<Response> {
  const stop = new AbortController()
  const timer = setTimeout(() => { stop.abort() }, PATIENCE_MS)
  try {
    const response = await fetch(request, { signal: stop.signal })
    return AWAY.includes(response.status) ? Response.error() : response
  } catch {
    return Response.error()
  } finally {
    clearTimeout(timer)
  }
}

/** The page from the server while it is in reach, else the copy kept here. */
async function openPage(request: Request): Promise<Response> {
  const response = await askServer(request)
  if (response.type !== 'error') return response
  const { pathname } = new URL(request.url)
  const [, district] = /^\/district\/([\w-]+)\/?$/.exec(pathname) ?? []
  if (district) return Response.redirect(`/district/${district}/plan`)
  const asked = findPage(pathname)
  const kept = asked && (await caches.match(keptAddress(asked.page), { cacheName: PAGE_CACHE }))
  return kept ? new Response(withIds(await kept.text(), asked.ids), { status: 200, headers: kept.headers }) : response
}

self.addEventListener('install', (event) => { event.waitUntil(keepPages()) })
self.addEventListener('activate', (event) => { event.waitUntil(dropOldPages()) })
serwist.addEventListeners()
