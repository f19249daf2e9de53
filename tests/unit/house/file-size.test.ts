import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { filesUnder, root } from './source-imports'

const LONGEST_LINES = 300

test(`no file of the program is longer than ${LONGEST_LINES} lines`, () => {
  const files = [...filesUnder('lib', ['.ts']), ...filesUnder('app', ['.ts', '.tsx']), ...filesUnder('scripts', ['.mjs'])]
  expect(files.length).toBeGreaterThan(20)
  const long = files.map((file) => ({ file, lines: readFileSync(path.join(root, file), 'utf8').split('\n').length }))
  expect(long.filter(({ lines }) => lines > LONGEST_LINES).map(({ file, lines }) => `${file}: ${lines}`)).toEqual([])
})
