import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { inRoot } from './places.mjs'
import { run, runNode } from './run.mjs'
import { PlainError, sayProgress } from './say.mjs'

const lockFile = inRoot('package-lock.json')
const stampFile = inRoot('node_modules', '.millrace-lock')

const readJson = (file) => JSON.parse(readFileSync(file, 'utf8'))
const lockHash = () => createHash('sha256').update(readFileSync(lockFile)).digest('hex')

/** True if what npm says it installed is what the lock file asks for, whoever installed it. */
function matchesLock() {
  const installedFile = inRoot('node_modules', '.package-lock.json')
  if (!existsSync(installedFile)) return false
  const installed = readJson(installedFile).packages
  return Object.entries(readJson(lockFile).packages).every(([name, wanted]) => {
    if (name === '') return true
    const found = installed[name]
    if (!found) return wanted.optional === true || wanted.devOptional === true || wanted.peer === true
    return found.version === wanted.version && found.integrity === wanted.integrity
  })
}

function isInstalled() {
  if (!existsSync(inRoot('node_modules'))) return false
  const hash = lockHash()
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash) return true
  if (!matchesLock()) return false
  writeFileSync(stampFile, hash)
  return true
}

/** npm as npm itself started us (no shell and no path needed), else from the path. */
function runNpm(args) {
  const own = process.env.npm_execpath
  const options = { quiet: true, env: { npm_config_loglevel: 'error' } }
  if (own && /\.c?js$/.test(own)) return runNode([own, ...args], options)
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, options)
}

/**
 * Installs exactly what the lock file names, if that is not what is there. Install scripts are not
 * run: none of our packages needs one, and some try to download programs.
 */
export async function ensureDependencies() {
  if (isInstalled()) return
  sayProgress('Installing packages (about a minute, only the first time and after an update)')
  const { code, output } = await runNpm(['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'])
  if (code !== 0) {
    throw new PlainError('The packages could not be installed: is the network there? Start again when it is.', output)
  }
  writeFileSync(stampFile, lockHash())
}
