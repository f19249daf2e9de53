export type Pair = { key: string; certificate: string }
export declare function ensureAuthority(folder: string, names: readonly string[], now?: Date): Promise<Pair>
export declare function mayVouchFor(authority: Pair, name: string): boolean
export declare function ensureServerCertificate(folder: string, authority: Pair, hosts: readonly string[], now?: Date): Promise<Pair>
export declare function certificateBytes(authority: Pair): Buffer
export declare function fingerprintOf(authority: Pair): string
