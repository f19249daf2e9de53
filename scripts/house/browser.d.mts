export declare function findBrowser(): Promise<string | undefined>
export declare function ensureBrowser(): Promise<string>
export declare function browserFlags(): string[]
