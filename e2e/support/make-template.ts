import { execFile } from 'node:child_process'
import { existsSync, rmSync } from 'node:fs'
import path from 'node:path'
import { promisify } from 'node:util'
import { TEMPLATES } from './templates'

const run = promisify(execFile)
const root = path.resolve(import.meta.dirname, '../..')

/** Makes the databases that each worker's server starts from, once for the whole run. */
export default async function makeTemplates(): Promise<void> {
  const build = process.env.MILLRACE_BUILD || '.next'
  if (!existsSync(path.join(root, build, 'BUILD_ID'))) throw new Error(`there is no build in ${build}: npm test makes one`)
  for (const [kind, folder] of Object.entries(TEMPLATES)) {
    rmSync(folder, { recursive: true, force: true })
    const args = ['scripts/make-database.mjs', ...(kind === 'demo' ? ['--demo'] : [])]
    await run(process.execPath, args, { cwd: root, env: { ...process.env, MILLRACE_DATA: folder } })
  }
}
