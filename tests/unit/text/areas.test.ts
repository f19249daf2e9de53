import { readdirSync } from 'node:fs'
import ts from 'typescript'
import { expect, test } from 'vitest'
import '../../fixtures/every-word'
import { allKeys } from '@/app/_text'
import { importsOf, root } from '../house/source-imports'
import { readSources, visitAll } from './source-files'

/** Areas whose words come with the files that say them. */
const areas = readdirSync(`${root}/app/_text/areas`).map((name) => name.replace(/\.ts$/, ''))
const keys = allKeys()

/** Areas that a file names keys of: written out, or put together from a beginning that is. */
function areasSaid(tree: ts.SourceFile): string[] {
  const found = new Set<string>()
  visitAll(tree, (node) => {
    const text = ts.isStringLiteralLike(node) ? node.text : ts.isTemplateHead(node) ? node.text : ''
    const area = areas.find((one) => text.startsWith(`${one}.`))
    const isKey = ts.isTemplateHead(node) ? keys.some((key) => key.startsWith(text)) : keys.includes(text)
    if (area && isKey) found.add(area)
  })
  return [...found]
}

test('a file that says words of an area that not all screens have brings them in itself', () => {
  const sources = readSources('app', ['.ts', '.tsx']).filter(({ path }) => !path.startsWith('app/_text/areas/'))
  const said = sources.flatMap(({ path, tree }) => areasSaid(tree).map((area) => ({ path, area })))
  expect(said.length).toBeGreaterThan(100)
  const lacking = said.filter(({ path, area }) => !importsSpecifier(path, area))
  expect(lacking.map(({ path, area }) => `${path} needs import '…/_text/areas/${area}'`)).toEqual([])
})

const importsSpecifier = (path: string, area: string): boolean => importsOf(path).some((specifier) => specifier.endsWith(`/areas/${area}`))
