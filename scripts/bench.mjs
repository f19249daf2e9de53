/** npm run bench: every measurement in tests/bench, one after the other so that none disturbs another. */
import { existsSync, readdirSync } from 'node:fs'
import { ensureDependencies } from './house/dependencies.mjs'
import { requireNode } from './house/node-version.mjs'
import { inRoot } from './house/places.mjs'
import { runTypeScript } from './house/run-typescript.mjs'
import { PlainError, runMain, say } from './house/say.mjs'

const folder = inRoot('tests', 'bench')

await runMain(async () => {
  requireNode()
  await ensureDependencies()
  const files = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.bench.ts')).sort() : []
  if (files.length === 0) throw new PlainError('There is nothing to measure in tests/bench.')
  for (const name of files) {
    say(`\n— ${name}`)
    const { code } = await runTypeScript([`${folder}/${name}`])
    if (code !== 0) throw new PlainError(`${name} ended with code ${code}.`)
  }
})
