export declare const root: string
export declare function inRoot(...parts: string[]): string
export declare function dataFolder(): string
export declare function databaseFile(): string
export declare function urlOfFile(file: string): string
export declare function databaseUrl(): string
export declare function buildFolder(): string
