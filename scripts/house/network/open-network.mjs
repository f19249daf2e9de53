import path from 'node:path'
import { connect } from '../migrations.mjs'
import { databaseFile, dataFolder, urlOfFile } from '../places.mjs'
import { PlainError, sayProgress } from '../say.mjs'
import { makeNetwork } from './network.mjs'

/** Under this key of the settings stands whether other devices are served; the app writes it. */
const SETTING = 'network'

function portFrom(name, usual) {
  const text = process.env[name]
  if (!text) return usual
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new PlainError(`${name} is "${text}" and must be a whole number from 0 to 65535.`)
  return port
}

async function isTurnedOn() {
  const database = await connect(urlOfFile(databaseFile()))
  try {
    const [row] = await database.rows(`SELECT value FROM Setting WHERE key = '${SETTING}'`)
    return row?.[0] === 'on'
  } finally {
    await database.close()
  }
}

/** What serves other devices, on if it was left on. Trouble with it is said and never keeps the station from being served. */
export async function openNetwork(handle) {
  const network = makeNetwork({ folder: path.join(dataFolder(), 'authority'), handle, port: portFrom('MILLRACE_NETWORK_PORT', 3443), guidePort: portFrom('MILLRACE_GUIDE_PORT', 3480) })
  // Kept on the global object for the app, which turns it on and off.
  globalThis.millraceNetwork = network
  if (await isTurnedOn()) {
    await network.setOn(true)
    const { trouble, port } = network.state()
    sayProgress(trouble ? `Other devices cannot be served: ${trouble.code === 'port-taken' ? `port ${trouble.port} is in use` : trouble.reason}.` : `Other devices are served on port ${port}`)
  }
  return network
}
