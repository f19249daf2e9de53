import { spawn } from 'node:child_process'
import { root } from './places.mjs'

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP']
const current = new Set()
let isInterrupted = false

/** While a command runs, what would end this process ends the command first. */
function passOn(signal) {
  isInterrupted = true
  for (const child of current) child.kill(signal)
}

function begin(child) {
  if (current.size === 0) for (const signal of SIGNALS) process.on(signal, passOn)
  current.add(child)
}

function end(child) {
  current.delete(child)
  if (current.size > 0) return
  for (const signal of SIGNALS) process.off(signal, passOn)
  if (isInterrupted) process.exit(130)
}

/**
 * Runs one command to its end.
 *
 * @param command program, found on the path
 * @param args    its arguments
 * @param options.env   added to this process's environment
 * @param options.quiet true: keep the output instead of showing it
 * @param options.stdin `inherit`: the command reads what this process is given
 * @returns exit code and kept output
 */
export function run(command, args, { env = {}, quiet = false, cwd = root, stdin = 'ignore' } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: quiet ? [stdin, 'pipe', 'pipe'] : [stdin, 'inherit', 'inherit'],
    })
    begin(child)
    let output = ''
    child.stdout?.on('data', (part) => (output += part))
    child.stderr?.on('data', (part) => (output += part))
    child.on('error', (error) => {
      end(child)
      reject(error)
    })
    child.on('close', (code, signal) => {
      end(child)
      resolve({ code: code ?? 1, signal, output })
    })
  })
}

/** Runs a JavaScript file of ours or of a package with this same Node. */
export const runNode = (args, options) => run(process.execPath, args, options)
