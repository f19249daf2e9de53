import ts from 'typescript'
import { expect, test } from 'vitest'
import { placeOf, readSources, visitAll } from './source-files'
import type { SourceFile } from './source-files'

/** Attributes whose text a person reads or hears. */
const spoken = new Set([
  'alt', 'title', 'placeholder', 'label', 'aria-label', 'aria-description', 'aria-roledescription', 'aria-valuetext', 'summary',
  'caption', 'heading', 'hint', 'error', 'text', 'sentence', 'description', 'message', 'empty',
])
const hasLetters = (text: string): boolean => /\p{L}/u.test(text)

/** Places in a screen file where words stand that no message file holds. */
function findTexts(file: SourceFile): string[] {
  const found: string[] = []
  const note = (node: ts.Node, text: string): void => { if (hasLetters(text)) found.push(`${placeOf(file, node)} ${text.trim()}`) }
  visitAll(file.tree, (node) => {
    if (ts.isJsxText(node)) note(node, node.text)
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent) && ts.isStringLiteralLike(node.expression)) note(node, node.expression.text)
    if (ts.isJsxAttribute(node) && spoken.has(node.name.getText(file.tree)) && node.initializer) {
      if (ts.isStringLiteral(node.initializer)) note(node, node.initializer.text)
      else if (ts.isJsxExpression(node.initializer) && node.initializer.expression && ts.isStringLiteralLike(node.initializer.expression)) note(node, node.initializer.expression.text)
    }
  })
  return found
}

test('no screen file holds words of its own', () => {
  const files = readSources('app', ['.tsx'])
  expect(files.length).toBeGreaterThan(0)
  expect(files.flatMap(findTexts)).toEqual([])
})

test('words in a tag, in braces and in a spoken attribute are each found', () => {
  const code = 'const x = <p title="Two" className="three">One {"Four"}<input aria-label={`Five`} />{say("shell.name")} 6</p>'
  const tree = ts.createSourceFile('x.tsx', code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX)
  expect(findTexts({ path: 'x.tsx', tree }).map((line) => line.split(' ').at(-1))).toEqual(['Two', 'One', 'Four', 'Five'])
})
