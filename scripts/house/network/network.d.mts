import type { IncomingMessage, ServerResponse } from 'node:http'

export type NetworkTrouble = { code: 'port-taken'; port: number } | { code: 'other'; reason: string }
export type NetworkState = {
  isOn: boolean
  port: number | undefined
  guidePort: number | undefined
  names: string[]
  addresses: string[]
  fingerprint: string | undefined
  notCovered: string[]
  trouble: NetworkTrouble | undefined
}
export type Network = { state(): NetworkState; setOn(isOn: boolean): Promise<void>; isKnown(host: string): boolean; look(): Promise<void>; stop(): Promise<void> }
export declare function makeNetwork(options: {
  folder: string
  handle: (request: IncomingMessage, response: ServerResponse) => void
  port: number
  guidePort: number
  names?: () => string[]
  addresses?: () => string[]
  now?: () => Date
}): Network
