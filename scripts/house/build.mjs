import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { hashOf } from './hash-files.mjs'
import { buildFolder, inRoot } from './places.mjs'
import { runNode } from './run.mjs'
import { PlainError, sayProgress } from './say.mjs'
import { bundleServiceWorker } from './service-worker.mjs'

/** All that the production build is made from. */
const SOURCES = [
  'app', 'lib', 'public', 'scripts/house/service-worker.mjs', 'scripts/house/backup-names.mjs', 'prisma/schema.prisma', 'proxy.ts', 'next.config.mjs', 'tsconfig.json', 'package.json', 'package-lock.json',
]

/** Builds the app for production, if anything it is made from changed since the last build. */
export async function ensureBuild() {
  const folder = buildFolder()
  const stampFile = inRoot(folder, 'millrace-build')
  const hash = hashOf(SOURCES, process.versions.node)
  const isFresh = existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash && existsSync(inRoot(folder, 'BUILD_ID'))
  if (isFresh) return
  sayProgress('Building the app, only the first time and after an update: about a minute, several on a slow or busy machine')
  rmSync(stampFile, { force: true })
  const { code, output } = await runNode([inRoot('node_modules/next/dist/bin/next'), 'build'], {
    quiet: true,
    env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  })
  if (code !== 0) throw new PlainError('The app could not be built; what the build said is above.', output)
  await bundleServiceWorker(folder)
  writeFileSync(stampFile, hash)
}
