import { hostname, networkInterfaces } from 'node:os'

const NAME = /^[a-z0-9](?:[a-z0-9-]{0,62})(?:\.[a-z0-9](?:[a-z0-9-]{0,62}))*$/

/** Names from MILLRACE_NAMES. */
export const configuredNames = () => (process.env.MILLRACE_NAMES ?? '').split(',').map((name) => name.trim().toLowerCase()).filter((name) => NAME.test(name) && !/^[\d.]+$/.test(name))

/** Names other devices may find this machine under: the configured ones first, then its own. */
export function ownNames() {
  const own = hostname().toLowerCase()
  const names = NAME.test(own) && own !== 'localhost' ? [own, ...(own.includes('.') ? [] : [`${own}.local`])] : []
  return [...new Set([...configuredNames(), ...names])]
}

/** Addresses of this machine on its networks, IPv4 first. One that is good on its own wire only has no use in a link. */
export function ownAddresses() {
  const all = Object.values(networkInterfaces()).flat().filter((one) => one && !one.internal && !one.address.toLowerCase().startsWith('fe80:'))
  const of = (family) => all.filter((one) => one.family === family).map((one) => one.address.toLowerCase())
  return [...new Set([...of('IPv4'), ...of('IPv6')])]
}
