import type { MadeSheet } from './kit'

/** Makes a sheet ever tighter and takes the first that spares a page over the last: so nothing is squeezed for nothing. */
export function fewestPages(make: (tightness: 0 | 1 | 2) => MadeSheet): MadeSheet {
  const loose = make(0)
  // Nothing can be spared of a single page.
  if (loose.pages.length === 1) return loose
  for (const tightness of [1, 2] as const) {
    const tight = make(tightness)
    if (tight.pages.length < loose.pages.length) return tight
  }
  return loose
}
