import { expect, test } from 'vitest'
import { findAppBreach, findOrderBreach } from './folder-order'
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

test('folders of app import only those before them', () => {
  const files = filesUnder('app', ['.ts', '.tsx'])
  expect(files.length).toBeGreaterThan(100)
  expect(files.flatMap((file) => importsOf(file).flatMap((specifier) => findAppBreach(file, specifier) ?? []))).toEqual([])
})

test('an import against the order of app is found, one along it is let through', () => {
  expect(findAppBreach('app/_ui/button.tsx', '../_frame/shell')).toMatch(/_ui stands before _frame/)
  expect(findAppBreach('app/_plan/planner.tsx', '@/app/_hose/new-lay')).toMatch(/_plan stands before _hose/)
  expect(findAppBreach('app/_home/district-list.tsx', '../page')).toMatch(/_home stands before page/)
  expect(findAppBreach('app/_plan/planner.tsx', '@/scripts/house/places.mjs')).toMatch(/does not use the commands/)
  expect(findAppBreach('app/_server/limits.ts', '@/tests/unit/client/fake-server')).toMatch(/does not use its tests/)
  expect(findAppBreach('app/_novel/thing.ts', '../_ui/button')).toMatch(/no place in the order/)
  expect(findAppBreach('app/_hose/hose-screen.tsx', '../_plan/plan-study')).toBeUndefined()
  expect(findAppBreach('app/district/[districtId]/plan/page.tsx', '@/app/_plan/plan-list')).toBeUndefined()
  expect(findAppBreach('app/_server/door.ts', '@/scripts/house/places.mjs')).toBeUndefined()
})

test('imports are found in every form they can be written in', () => {
  const text = "import a from './a'\nexport * from './b'\ntype C = import('./c').C\nconst d = () => import('./d')\nimport './e'\n"
  expect(importsOf('lib/x.ts', text)).toEqual(['./a', './b', './c', './d', './e'])
})
