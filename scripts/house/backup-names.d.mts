export declare const DAY_ms: number
export declare const DAYS_KEPT: number
export declare const WEEKS_KEPT: number
export declare function backupFolderOf(databaseFile: string): string
export declare function backupName(when: Date): string
export declare function backupTime(name: string): Date | undefined
export declare function keptNames(names: readonly string[]): Set<string>
export declare function isFull(reason: string): boolean
