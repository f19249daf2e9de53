export declare function listBackups(folder: string): Promise<{ path: string; name: string; madeAt: Date; size: number }[]>
export declare function makeBackup(file: string, now?: Date): Promise<string>
export declare function isBackupDue(file: string, now?: Date): Promise<boolean>
