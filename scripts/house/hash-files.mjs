import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { inRoot, root } from './places.mjs'

function* filesUnder(place) {
  if (!existsSync(place)) return
  if (statSync(place).isFile()) {
    yield place
    return
  }
  const entries = readdirSync(place, { withFileTypes: true })
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith('.') || entry.name === 'node_modules') continue
    yield* filesUnder(path.join(place, entry.name))
  }
}

/** One hash over the names and contents of files and folders, given relative to the project. */
export function hashOf(places, extra = '') {
  const hash = createHash('sha256').update(extra)
  for (const place of places) {
    for (const file of filesUnder(inRoot(place))) {
      hash.update(path.relative(root, file)).update('\0').update(readFileSync(file)).update('\0')
    }
  }
  return hash.digest('hex')
}
