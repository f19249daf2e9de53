/** Hands the user a text file to keep. */
export function saveFile(name: string, text: string, type = 'application/json'): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type }))
  link.download = name.replace(/[\\/:*?"<>|]/g, ' ').trim()
  link.click()
  URL.revokeObjectURL(link.href)
}
