import { expect, test } from 'vitest'
import { findOrderBreach } from './folder-order'
import { filesUnder, importsOf } from './source-imports'

test('folders of lib import only those before them', () => {
  const files = filesUnder('lib', ['.ts'])
  expect(files.length).toBeGreaterThan(10)
  const breaches = files.flatMap((file) => importsOf(file).flatMap((specifier) => findOrderBreach(file, specifier) ?? []))
  expect(breaches).toEqual([])
})

test('an import against the order is found', () => {
  expect(findOrderBreach('lib/hydraulics/lay.ts', '../plan')).toMatch(/hydraulics stands before plan/)
  expect(findOrderBreach('lib/shuttle/run.ts', '../priming/primer')).toMatch(/shuttle stands before priming/)
  expect(findOrderBreach('lib/plan/plan.ts', '../../app/page')).toMatch(/leaves lib/)
  expect(findOrderBreach('lib/novel/thing.ts', '../units')).toMatch(/no place in the order/)
})

test('an import along the order is let through', () => {
  expect(findOrderBreach('lib/supply/evaluate.ts', '../plan')).toBeUndefined()
  expect(findOrderBreach('lib/roads/graph.ts', '../osm')).toBeUndefined()
  expect(findOrderBreach('lib/plan/edits/add.ts', '../../units')).toBeUndefined()
  expect(findOrderBreach('lib/plan/edits/add.ts', 'zod')).toBeUndefined()
})

test('imports are found in every form they can be written in', () => {
  const text = "import a from './a'\nexport * from './b'\ntype C = import('./c').C\nconst d = () => import('./d')\nimport './e'\n"
  expect(importsOf('lib/x.ts', text)).toEqual(['./a', './b', './c', './d', './e'])
})
