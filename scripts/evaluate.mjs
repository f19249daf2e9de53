/** npm run -s evaluate: the answer for a plan file, without server, database or browser. */
import { ensureDependencies } from './house/dependencies.mjs'
import { requireNode } from './house/node-version.mjs'
import { inRoot } from './house/places.mjs'
import { runTypeScript } from './house/run-typescript.mjs'
import { runMain } from './house/say.mjs'

await runMain(async () => {
  requireNode()
  await ensureDependencies()
  // Paths are read from the folder the command was typed in.
  const cwd = process.env.INIT_CWD ?? process.cwd()
  const { code } = await runTypeScript([inRoot('app', '_cli', 'evaluate.ts'), ...process.argv.slice(2)], { cwd, stdin: 'inherit' })
  return code
})
