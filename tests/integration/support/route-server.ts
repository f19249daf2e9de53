import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { readdirSync } from 'node:fs'
import path from 'node:path'
import { root } from './scratch-database'

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>

/** Routes of the API as the framework finds them: by folder, one name in brackets at most. */
const routes = (readdirSync(path.join(root, 'app/api'), { recursive: true }) as string[])
  .filter((file) => path.basename(file) === 'route.ts')
  .map((file) => `/api/${file.split(path.sep).join('/').replace(/\/route\.ts$/, '')}`)
  .map((route) => ({ route, name: /\[(\w+)\]/.exec(route)?.[1], pattern: new RegExp(`^${route.replace(/\[\w+\]/, '([^/]+)')}$`) }))

async function answer(message: IncomingMessage, response: ServerResponse, way: string): Promise<void> {
  const url = new URL(message.url ?? '/', `http://${message.headers.host}`)
  const found = routes.find(({ pattern }) => pattern.test(url.pathname))
  const loaded = found && ((await import(/* @vite-ignore */ path.join(root, 'app/api', found.route.slice('/api/'.length), 'route.ts'))) as Record<string, Handler>)
  const handler = loaded?.[message.method ?? 'GET']
  if (!found || !handler) return void response.writeHead(404).end()
  const parts: Buffer[] = []
  for await (const part of message) parts.push(part as Buffer)
  const abort = new AbortController()
  response.on('close', () => { abort.abort() })
  const headers = new Headers(Object.entries(message.headers).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value] as [string, string]] : [])))
  headers.set('x-millrace-way', way)
  const key = found.pattern.exec(url.pathname)?.[1]
  const given = await handler(new Request(url, { method: message.method, headers, signal: abort.signal, ...(parts.length > 0 && { body: Buffer.concat(parts) }) }), { params: Promise.resolve(found.name && key !== undefined ? { [found.name]: decodeURIComponent(key) } : {}) })
  response.writeHead(given.status, Object.fromEntries(given.headers))
  if (!given.body) return void response.end()
  try {
    for await (const piece of given.body as unknown as AsyncIterable<Uint8Array>) response.write(piece)
    response.end()
  } catch {
    response.destroy()
  }
}

/** The API on a port of this machine, each request marked as having come by this way, as our own listener marks it. */
export async function serveRoutes(way: string, port = 0): Promise<{ port: number; server: Server; stop(): Promise<void> }> {
  const server = createServer((message, response) => void answer(message, response, way))
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  const stop = () => new Promise<void>((resolve) => {
    server.close(() => { resolve() })
    server.closeAllConnections()
  })
  return { port: (server.address() as AddressInfo).port, server, stop }
}
