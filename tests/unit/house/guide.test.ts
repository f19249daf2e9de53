import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { placesNamedIn, scriptsNamedIn } from './guide-references'
import { filesUnder, root } from './source-imports'

const guides = ['DEVELOPERS.md', 'README.md', ...filesUnder('lib', ['README.md']), ...filesUnder('app', ['README.md'])]
const scripts = Object.keys((JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { scripts: object }).scripts)

describe.each(guides.map((name) => ({ name, text: readFileSync(path.join(root, name), 'utf8') })))('$name', ({ name, text }) => {
  test('names only places that exist', () => {
    // A README beside the code names its neighbours without their folder.
    const isThere = (place: string) => [root, path.dirname(path.join(root, name))].some((folder) => existsSync(path.join(folder, place)))
    expect(placesNamedIn(text).filter((place) => !isThere(place))).toEqual([])
  })

  test('names only commands that exist', () => {
    expect(scriptsNamedIn(text).filter((script) => !scripts.includes(script))).toEqual([])
  })
})

test('the README names every field of a result', () => {
  const schema = JSON.parse(readFileSync(path.join(root, 'public/schemas/result.schema.json'), 'utf8')) as { properties: object }
  const readme = readFileSync(path.join(root, 'README.md'), 'utf8')
  const fields = Object.keys(schema.properties)
  expect(fields.length).toBeGreaterThan(20)
  expect(fields.filter((field) => !readme.includes(`\`${field}\``))).toEqual([])
})

test('places and commands are found in a text', () => {
  const text = 'Run `npm run -s evaluate` or npm test; see `lib/plan/edits`, `proxy.ts` and `say(key)`. A ratio `a / b` is none.'
  expect(placesNamedIn(text)).toEqual(['lib/plan/edits', 'proxy.ts'])
  expect(scriptsNamedIn(text)).toEqual(['evaluate', 'test'])
})

test('the commands everyone relies on are there', () => {
  expect(scripts).toEqual(expect.arrayContaining(['start', 'test', 'evaluate', 'bench', 'lint', 'types']))
})
