/**
 * By which way a request came, told to the app in a header that no client can forge: whatever a client sends under its
 * name is replaced, and the value begins with a secret of this process.
 */
import { randomBytes } from 'node:crypto'

export const WAY_HEADER = 'x-millrace-way'

const secret = randomBytes(32).toString('hex')

// Kept on the global object for the app, which runs in this process; the variable says that it must be there.
globalThis.millraceWaySecret = secret
process.env.MILLRACE_SERVED = '1'

/** An address without the prefix by which IPv6 sockets show IPv4. */
export const plainAddress = (address) => String(address ?? '').replace(/^::ffff:/i, '')

export function markStation(request) {
  request.headers[WAY_HEADER] = `${secret} station`
}

/** @param address whoever asks, for counting tries; the connection's own unless a proxy in front said otherwise */
export function markNetwork(request, address = plainAddress(request.socket.remoteAddress)) {
  request.headers[WAY_HEADER] = `${secret} network ${address}`
}

/** The address that the proxy in front of us saw: the last it wrote, for those before it come from the client. */
export const forwardedAddress = (request) => {
  const list = String(request.headers['x-forwarded-for'] ?? '').split(',')
  return /^[\da-f.:]{2,45}$/i.exec(list.at(-1)?.trim() ?? '')?.[0] ?? plainAddress(request.socket.remoteAddress)
}
