/** A browser may still be reading the text some time after it was told to keep it. [ms] */
const READ_MS = 10_000

/** Hands the user a text file to keep, under a name that any file system takes. */
export function saveFile(name: string, text: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name.replace(/[\\/:*?"<>|]/g, ' ').trim()
  link.click()
  setTimeout(() => { URL.revokeObjectURL(address) }, READ_MS)
}
