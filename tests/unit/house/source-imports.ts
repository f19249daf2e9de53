import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import ts from 'typescript'

export const root = path.resolve(import.meta.dirname, '../../..')

/** Files under a folder of the project, as paths from its root with forward slashes. */
export function filesUnder(folder: string, endings: readonly string[]): string[] {
  const found: string[] = []
  const visit = (place: string) => {
    for (const name of readdirSync(place).sort()) {
      const file = path.join(place, name)
      if (statSync(file).isDirectory()) visit(file)
      else if (endings.some((end) => name.endsWith(end))) found.push(path.relative(root, file).split(path.sep).join('/'))
    }
  }
  visit(path.join(root, folder))
  return found
}

/** What a file imports, exports from or names in an import type, as written. */
export function importsOf(file: string, text = readFileSync(path.join(root, file), 'utf8')): string[] {
  const specifiers: string[] = []
  const visit = (node: ts.Node): void => {
    const isStatic = (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier
    if (isStatic && ts.isStringLiteral(isStatic)) specifiers.push(isStatic.text)
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) {
      specifiers.push(node.argument.literal.text)
    }
    const [argument] = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword ? node.arguments : []
    if (argument && ts.isStringLiteral(argument)) specifiers.push(argument.text)
    ts.forEachChild(node, visit)
  }
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true))
  return specifiers
}
