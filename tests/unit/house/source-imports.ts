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
export const importsOf = (file: string, text = readFileSync(path.join(root, file), 'utf8')): string[] =>
  ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName)

/** File of the project that an import means; undefined for a package, a style sheet or a file that is not known. */
export function resolveImport(file: string, specifier: string, known: ReadonlySet<string>): string | undefined {
  if (!specifier.startsWith('.') && !specifier.startsWith('@/')) return undefined
  const place = specifier.startsWith('@/') ? specifier.slice(2) : path.posix.join(path.posix.dirname(file), specifier)
  return [place, `${place}.ts`, `${place}.tsx`, `${place}/index.ts`].find((candidate) => known.has(candidate))
}
