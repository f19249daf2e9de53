import type { IncomingMessage } from 'node:http'

export declare const WAY_HEADER: 'x-millrace-way'
export declare function plainAddress(address: string | undefined): string
export declare function markStation(request: IncomingMessage): void
export declare function markNetwork(request: IncomingMessage, address?: string): void
export declare function forwardedAddress(request: IncomingMessage): string
