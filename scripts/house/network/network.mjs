/** Serving other devices: an HTTPS listener on all addresses with the station's own certificate, and the guide beside it. */
import { createServer } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import { ensureAuthority, ensureServerCertificate, fingerprintOf, mayVouchFor } from './certificates.mjs'
import { answerGuide } from './guide.mjs'
import { ownAddresses, ownNames } from './own-addresses.mjs'
import { markNetwork } from './ways.mjs'

const REFRESH_ms = 60_000
const DAY_ms = 24 * 60 * 60 * 1000
const shownHost = (host) => (host.includes(':') ? `[${host}]` : host)

/** On every address of both kinds, or of the one kind there is. */
function listenEverywhere(server, port) {
  const on = (host) => new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host, port }, () => {
      server.off('error', reject)
      resolve(server.address().port)
    })
  })
  return on('::').catch((error) => (['EAFNOSUPPORT', 'EADDRNOTAVAIL'].includes(error.code) ? on('0.0.0.0') : Promise.reject(error)))
}

const closed = (server) => new Promise((resolve) => {
  server.close(() => resolve())
  server.closeAllConnections()
})

/**
 * @param options.folder    of the authority and its keys
 * @param options.handle    the app's request handler
 * @param options.port      and options.guidePort: the two ports; 0 for any
 * @param options.names     and options.addresses: how this machine is found; what the system says, unless a test brings others
 * @returns state, switch, and look for changed addresses
 */
export function makeNetwork({ folder, handle, port, guidePort, names = ownNames, addresses = ownAddresses, now = () => new Date() }) {
  const off = () => ({ isOn: false, port: undefined, guidePort: undefined, names: [], addresses: [], fingerprint: undefined, notCovered: [], trouble: undefined })
  let state = off()
  let running
  let queue = Promise.resolve()

  const known = (host) => [...state.names, ...state.addresses].includes(host.replace(/^\[|\]$/g, ''))

  /** What the certificate is to be for now; a name that came after the authority was made cannot be vouched for. */
  async function certify(authority) {
    const found = { names: names(), addresses: addresses() }
    const isCovered = (host) => mayVouchFor(authority, host)
    const hosts = [...found.names, ...found.addresses, '127.0.0.1'].filter(isCovered)
    const server = await ensureServerCertificate(folder, authority, hosts, now())
    state = { ...state, names: found.names.filter(isCovered), addresses: found.addresses.filter(isCovered), notCovered: [...found.names, ...found.addresses].filter((host) => !isCovered(host)) }
    return { key: server.key, cert: server.certificate + authority.certificate, minVersion: 'TLSv1.2' }
  }

  async function start() {
    if (running) return
    state = { ...off(), isOn: true }
    const authority = await ensureAuthority(folder, names(), now())
    const secure = createSecureServer(await certify(authority), (request, response) => {
      markNetwork(request)
      handle(request, response)
    })
    const guide = createServer({ headersTimeout: 10_000, requestTimeout: 10_000, maxHeaderSize: 8192 }, (request, response) =>
      answerGuide(request, response, authority, (host) => (known(host) || host === '127.0.0.1' ? `https://${shownHost(host)}:${state.port}/join` : undefined)))
    try {
      state = { ...state, port: await listenEverywhere(secure, port), guidePort: await listenEverywhere(guide, guidePort), fingerprint: fingerprintOf(authority) }
    } catch (error) {
      await Promise.all([secure, guide].filter((server) => server.listening).map(closed))
      throw error
    }
    // A certificate about to end is seen within a day, a changed address within a minute.
    const key = () => JSON.stringify([names(), addresses(), Math.floor(now().getTime() / DAY_ms)])
    let seen = key()
    const look = async () => {
      if (key() === seen) return
      seen = key()
      secure.setSecureContext(await certify(authority))
      state = { ...state, trouble: undefined }
    }
    const timer = setInterval(() => void look().catch((error) => { state = { ...state, trouble: { code: 'other', reason: String(error?.message ?? error) } } }), REFRESH_ms)
    timer.unref()
    running = { look, stop: async () => { clearInterval(timer); await Promise.all([closed(secure), closed(guide)]) } }
  }

  const troubleOf = (error) => (error?.code === 'EADDRINUSE' ? { code: 'port-taken', port: error.port } : { code: 'other', reason: String(error?.message ?? error) })

  const setOn = (isOn) => {
    queue = queue.then(async () => {
      if (isOn) await start().catch((error) => { state = { ...off(), isOn: true, trouble: troubleOf(error) } })
      else {
        await running?.stop()
        running = undefined
        state = off()
      }
    })
    return queue
  }
  return { state: () => state, setOn, isKnown: known, look: () => running?.look() ?? Promise.resolve(), stop: () => setOn(false) }
}
