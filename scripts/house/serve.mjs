/** Serves the built app from this process. */
import { createServer } from 'node:http'
import { startBackups } from './backup-schedule.mjs'
import { listen } from './listen.mjs'
import { openNetwork } from './network/open-network.mjs'
import { forwardedAddress, markNetwork, markStation } from './network/ways.mjs'
import { databaseFile, root } from './places.mjs'
import { sayProgress } from './say.mjs'

/** Moves what is still in the log into the database file, so that the file alone is the whole of it. */
async function settleDatabase() {
  const database = await globalThis.millraceDatabase
  await database?.$queryRawUnsafe('PRAGMA wal_checkpoint(TRUNCATE)')
  await database?.$disconnect()
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
  const serverThat = (mark) => createServer(async (request, response) => {
    const handle = await opened.promise
    mark(request)
    handle(request, response)
  })
  // Behind a hosting proxy whoever comes by this port may come from anywhere; the station itself then has a port of its own.
  const isHosted = process.env.MILLRACE_HOSTED === '1'
  const server = serverThat(isHosted ? (request) => markNetwork(request, forwardedAddress(request)) : markStation)
  const actualPort = await listen(server, host, { port, isFixed })
  const station = isHosted ? serverThat(markStation) : undefined
  if (station) {
    const stationPort = await listen(station, '127.0.0.1', { port: Number(process.env.MILLRACE_STATION_PORT || actualPort + 1), isFixed: true })
    sayProgress(`The station's own pages are at http://127.0.0.1:${stationPort}`)
  }
  const { default: next } = await import('next')
  const app = next({ dev: false, dir: root, hostname: host, port: actualPort, httpServer: server })
  await quietly(() => app.prepare())
  const handle = app.getRequestHandler()
  opened.resolve(handle)
  const network = await openNetwork(handle)
  const backups = startBackups(databaseFile(), { say: sayProgress })
  // Kept on the global object for the pages, which run in this process.
  globalThis.millraceBackups = backups.state
  const stop = async () => {
    backups.stop()
    await network.stop()
    for (const one of [server, station]) {
      one?.close()
      one?.closeAllConnections()
    }
    await app.close()
    await settleDatabase()
  }
  return { port: actualPort, address: `http://${shownHost(host)}:${actualPort}`, stop }
}
