/** Serves the built app from this process. */
import { createServer } from 'node:http'
import { root } from './places.mjs'
import { PlainError } from './say.mjs'

const LAST_PORT_TRIED = 50

function listenOn(server, host, port) {
  return new Promise((resolve, reject) => {
    const refuse = (error) => reject(error)
    server.once('error', refuse)
    server.listen({ host, port }, () => {
      server.off('error', refuse)
      resolve(server.address().port)
    })
  })
}

/** The wanted port; if it is taken and need not be that one, the next free one. */
async function listen(server, host, { port, isFixed }) {
  for (let tried = port; ; tried += 1) {
    try {
      return await listenOn(server, host, tried)
    } catch (error) {
      const isTaken = error.code === 'EADDRINUSE'
      if (isTaken && !isFixed && tried < port + LAST_PORT_TRIED) continue
      if (isTaken) throw new PlainError(`Port ${tried} is already in use: stop what uses it or set PORT to another number.`)
      throw new PlainError(`Millrace cannot listen on ${host} port ${tried}: ${error.message}.`)
    }
  }
}

/** The framework says at its start how long it took to read its settings; nobody asked. */
async function quietly(work) {
  const { log } = console
  console.log = () => undefined
  try {
    return await work()
  } finally {
    console.log = log
  }
}

function withResolvers() {
  const made = {}
  made.promise = new Promise((resolve, reject) => Object.assign(made, { resolve, reject }))
  return made
}

const shownHost = (host) => (host.includes(':') ? `[${host}]` : host)

/**
 * @param options.host    address to listen on
 * @param options.port    first port to try; 0 for any
 * @param options.isFixed true: that port or none
 * @returns address, port and how to stop
 */
export async function serve({ host, port, isFixed }) {
  process.env.NODE_ENV = 'production'
  process.env.NEXT_TELEMETRY_DISABLED = '1'
  // The port is taken before the app is loaded, so that what it is told of its address is so.
  const opened = withResolvers()
  const server = createServer(async (request, response) => {
    const handle = await opened.promise
    handle(request, response)
  })
  const actualPort = await listen(server, host, { port, isFixed })
  const { default: next } = await import('next')
  const app = next({ dev: false, dir: root, hostname: host, port: actualPort, httpServer: server })
  await quietly(() => app.prepare())
  opened.resolve(app.getRequestHandler())
  const stop = async () => {
    server.close()
    server.closeAllConnections()
    await app.close()
  }
  return { port: actualPort, address: `http://${shownHost(host)}:${actualPort}`, stop }
}
