export declare function requireNode(version?: string): void
