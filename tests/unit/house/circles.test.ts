import { expect, test } from 'vitest'
import { findCircles } from './find-circles'
import { filesUnder, importsOf, resolveImport } from './source-imports'

test('no file of the program imports itself by way of others', () => {
  const files = [...filesUnder('lib', ['.ts']), ...filesUnder('app', ['.ts', '.tsx']), ...filesUnder('scripts', ['.mjs'])]
  expect(files.length).toBeGreaterThan(500)
  const known = new Set(files)
  const imports = new Map(files.map((file) => [file, importsOf(file).flatMap((specifier) => resolveImport(file, specifier, known) ?? [])]))
  expect([...imports.values()].flat().length).toBeGreaterThan(1000)
  expect(findCircles(imports)).toEqual([])
})

test('a circle is found, with all who stand in it, and nobody beside it', () => {
  const imports = new Map([['a', ['b', 'd']], ['b', ['c']], ['c', ['a']], ['d', []], ['e', ['a']], ['f', ['f']]])
  expect(findCircles(imports)).toEqual([['a', 'b', 'c'], ['f']])
})

test('an import is led to its file, as written from the file or from the root', () => {
  const known = new Set(['lib/plan/index.ts', 'lib/units.ts', 'app/_ui/button.tsx', 'scripts/house/run.mjs'])
  expect(resolveImport('lib/plan/index.ts', '../units', known)).toBe('lib/units.ts')
  expect(resolveImport('app/_plan/planner.tsx', '../_ui/button', known)).toBe('app/_ui/button.tsx')
  expect(resolveImport('app/_plan/planner.tsx', '@/lib/plan', known)).toBe('lib/plan/index.ts')
  expect(resolveImport('scripts/start.mjs', './house/run.mjs', known)).toBe('scripts/house/run.mjs')
  expect(resolveImport('app/_plan/planner.tsx', 'react', known)).toBeUndefined()
  expect(resolveImport('app/_plan/planner.tsx', './planner.module.css', known)).toBeUndefined()
})
