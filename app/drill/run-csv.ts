import { recordRows, type Drill } from '@/lib/priming/drill'

/** The run's record as comma-separated values, one row each tenth of a second, names with their units on top. Numbers only, so nothing needs quoting. */
export const csvOf = (drill: Drill): string => `${recordRows(drill.record).map((row) => row.join(',')).join('\r\n')}\r\n`

/** Hands a text to the browser as a file. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => { URL.revokeObjectURL(address) }, 10_000)
}
