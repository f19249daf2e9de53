/** A list that this device keeps beside the documents; where storage is forbidden nothing is kept. */
export type KeptList<T> = {
  /** What is kept, newest first; the same list as long as nothing changed. */
  read(): readonly T[]
  /** @returns whether the device kept it */
  write(list: readonly T[]): boolean
  /** Calls when it changes, in this window or another. @returns how to stop */
  listen(listener: () => void): () => void
}

/**
 * @param most     of so many, those that come first
 * @param findItem one of the list as it is kept, or undefined for what cannot be read: that is passed over
 */
export function keptList<T>(key: string, { most, findItem }: { most: number; findItem: (kept: unknown) => T | undefined }): KeptList<T> {
  const listeners = new Set<() => void>()
  let lastText = ''
  let last: readonly T[] = []

  const storedText = (): string => {
    try {
      return localStorage.getItem(key) ?? ''
    } catch {
      return ''
    }
  }
  const parsed = (text: string): readonly T[] => {
    try {
      const listed: unknown = JSON.parse(text)
      return Array.isArray(listed) ? listed.map(findItem).filter((item) => item !== undefined) : []
    } catch {
      return []
    }
  }
  return {
    read: () => {
      const text = storedText()
      if (text !== lastText) [lastText, last] = [text, parsed(text)]
      return last
    },
    write: (list) => {
      try {
        localStorage.setItem(key, JSON.stringify(list.slice(0, most)))
      } catch {
        return false
      }
      for (const listener of listeners) listener()
      return true
    },
    listen: (listener) => {
      listeners.add(listener)
      window.addEventListener('storage', listener)
      return () => {
        listeners.delete(listener)
        window.removeEventListener('storage', listener)
      }
    },
  }
}
