import type { Devices } from './devices'

const shownHost = (host: string) => (host.includes(':') ? `[${host}]` : host)

/** Names and addresses under which other devices may find this station. */
export const joinHosts = ({ network }: Pick<Devices, 'network'>): string[] => (network ? [...network.addresses, ...network.names] : [])

/** Where other devices find this station: for their guide, and to join; neither while they cannot be served. */
export function joinBase({ network, hosted }: Pick<Devices, 'network' | 'hosted'>, chosen?: string): { host?: string; guide?: string; base?: string } {
  const hosts = joinHosts({ network })
  const host = hosts.find((one) => one === chosen) ?? hosts[0]
  const isServed = network?.isOn === true && network.port !== undefined && !network.trouble
  const guide = isServed && host ? `http://${shownHost(host)}:${network.guidePort}/` : undefined
  const base = hosted[0] ? `https://${hosted[0]}` : isServed && host ? `https://${shownHost(host)}:${network.port}` : undefined
  return { ...(host !== undefined && { host }), ...(guide !== undefined && { guide }), ...(base !== undefined && { base }) }
}
