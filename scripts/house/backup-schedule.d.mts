export type BackupState = { trouble: { isFull: boolean; reason: string } | undefined }
export declare function startBackups(
  file: string,
  options: { say: (sentence: string) => void; isDue?: (file: string) => Promise<boolean>; make?: (file: string) => Promise<string>; check_ms?: number },
): { state: BackupState; look: () => Promise<void>; stop: () => void }
