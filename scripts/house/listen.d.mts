import type { Server } from 'node:net'

export declare function listen(server: Server, host: string, wanted: { port: number; isFixed: boolean }): Promise<number>
