import type { WAY_HEADER } from '@/scripts/house/network/ways.mjs'

/** By which way a request came: from this machine itself, or over the network, and then from which address. */
export type Way = { kind: 'station' } | { kind: 'network'; address: string }

const HEADER: typeof WAY_HEADER = 'x-millrace-way'

// Put on the global object by the server that this module runs in.
const held = globalThis as typeof globalThis & { millraceWaySecret?: string }

/**
 * What our own listener says of a request. It replaces whatever a client sends under that header, and its word begins
 * with a secret of the process; without it a request counts as coming over the network. Only where no listener of ours
 * is in front at all, as in development and in tests, everything comes from this machine.
 */
export function wayOf(headers: Headers): Way {
  const secret = held.millraceWaySecret
  if (secret === undefined) return process.env.MILLRACE_SERVED === '1' ? { kind: 'network', address: '' } : { kind: 'station' }
  const [given, kind, address = ''] = headers.get(HEADER)?.split(' ') ?? []
  return given === secret && kind === 'station' ? { kind: 'station' } : { kind: 'network', address: given === secret ? address : '' }
}
