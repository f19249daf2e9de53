import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'

const root = fileURLToPath(new URL('../../../', import.meta.url))

export type SourceFile = { readonly path: string; readonly tree: ts.SourceFile }

/** Every source file below a folder of the project with one of the endings, parsed. */
export function readSources(folder: string, endings: readonly string[]): SourceFile[] {
  if (!existsSync(root + folder)) return []
  return readdirSync(root + folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => endings.some((ending) => name.endsWith(ending)) && !name.endsWith('.d.ts'))
    .sort()
    .map((name) => {
      const path = `${folder}/${name}`
      return { path, tree: ts.createSourceFile(path, readFileSync(root + path, 'utf8'), ts.ScriptTarget.Latest, true) }
    })
}

/** Where a node stands, for a message. */
export function placeOf({ path, tree }: SourceFile, node: ts.Node): string {
  return `${path}:${tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1}`
}

export function visitAll(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node)
  node.forEachChild((child) => { visitAll(child, visit) })
}
