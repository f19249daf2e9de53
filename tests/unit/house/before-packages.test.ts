import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { inRoot } from '@/scripts/house/places.mjs'

/** The commands of package.json that a bare clone must run: they install what is missing before they need it. */
const scripts = (JSON.parse(readFileSync(inRoot('package.json'), 'utf8')) as { scripts: Record<string, string> }).scripts
const commands = Object.values(scripts).flatMap((command) => /^node (scripts\/[\w-]+\.mjs)/.exec(command)?.[1] ?? [])

/** Packages that a script names at its top, or that what it names there does: without them it cannot begin. */
function packagesAtTop(file: string, seen = new Set<string>()): string[] {
  if (seen.has(file)) return []
  seen.add(file)
  const named = [...readFileSync(file, 'utf8').matchAll(/^(?:import |(?:import|export|\}) .*?from |\} from )'([^']+)'/gm)].map(([, name]) => name!)
  return named.flatMap((name) => {
    if (name.startsWith('.')) return packagesAtTop(path.resolve(path.dirname(file), name), seen)
    return name.startsWith('node:') ? [] : [`${path.relative(inRoot(), file)}: ${name}`]
  })
}

test('there are commands to look at', () => {
  expect(commands).toContain('scripts/start.mjs')
  expect(commands).toContain('scripts/test.mjs')
})

test.each(commands)('%s begins without a package installed', (command) => {
  expect(packagesAtTop(inRoot(command))).toEqual([])
})

test('a package named at the top is found', () => {
  expect(packagesAtTop(inRoot('scripts/house/migrations.mjs'))).not.toEqual([])
})
