export declare function setAsideDatabase(file: string): string | undefined
export declare function migrateDatabase(file: string): Promise<void>
export declare function isDatabaseEmpty(file: string): Promise<boolean>
