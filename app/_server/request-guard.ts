/** Who may ask, and from where: used by the pages' proxy and by every part of the API. */
import { isNetworkHost } from './devices/network'
import { wayOf } from './devices/way'

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]']
const WILDCARDS = ['0.0.0.0', '::', '[::]']

/** Host names this server answers to: the loopback ones, MILLRACE_HOST, and the list in MILLRACE_NAMES. */
function knownNames(): string[] {
  const configured = [process.env.MILLRACE_HOST ?? '', ...(process.env.MILLRACE_NAMES ?? '').split(',')]
  return [...LOOPBACK, ...configured.map((name) => name.trim().toLowerCase()).filter((name) => name && !WILDCARDS.includes(name))]
}

const nameOf = (host: string): string => host.trim().toLowerCase().replace(/:\d+$/, '')

/**
 * True if the request names a host of ours. A page of another site whose name was turned to this
 * machine's address sends that site's name, and is refused by it.
 */
export function isKnownHost(headers: Headers): boolean {
  const host = headers.get('host')
  if (host === null) return false
  return knownNames().includes(nameOf(host)) || (wayOf(headers).kind === 'network' && isNetworkHost(nameOf(host)))
}

/**
 * True if a change request comes from our own pages, or from no page at all. Browsers put `Origin`
 * on every request that can change something, and `Sec-Fetch-Site` where they know it.
 */
export function isOwnOrigin(headers: Headers): boolean {
  const site = headers.get('sec-fetch-site')
  if (site !== null && site !== 'same-origin' && site !== 'none') return false
  const origin = headers.get('origin')
  if (origin === null) return true
  if (!URL.canParse(origin)) return false
  return new URL(origin).host === headers.get('host')?.trim().toLowerCase()
}
