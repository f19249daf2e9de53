/** Bundles the service worker with the list of what the build it belongs to is made of. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { inRoot } from './places.mjs'

/** Files a page may load: addresses carry a hash of their content, so none needs another mark of its age. */
const filesOf = (folder) =>
  readdirSync(inRoot(folder, 'static'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `/_next/static/${path.relative(inRoot(folder, 'static'), path.join(entry.parentPath, entry.name)).split(path.sep).map(encodeURIComponent).join('/')}`)
    .sort()

export async function bundleServiceWorker(folder) {
  const entry = inRoot('app', '_shell', 'service-worker.ts')
  if (!existsSync(entry)) return
  const { build } = await import('esbuild')
  await build({
    entryPoints: [entry],
    outfile: inRoot(folder, 'service-worker.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    logLevel: 'error',
    define: {
      __BUILD__: JSON.stringify(readFileSync(inRoot(folder, 'BUILD_ID'), 'utf8')),
      __FILES__: JSON.stringify(filesOf(folder)),
      'process.env.NODE_ENV': '"production"',
    },
  })
}
