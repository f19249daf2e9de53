import { spawn } from 'node:child_process'
import { root } from './places.mjs'

const current = new Set()

/** Children die with us: whatever ends this process, they get the signal too. */
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
  process.on(signal, () => {
    if (current.size === 0) return
    for (const child of current) child.kill(signal)
    process.exitCode = 130
  })
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
    current.add(child)
    let output = ''
    child.stdout?.on('data', (part) => (output += part))
    child.stderr?.on('data', (part) => (output += part))
    child.on('error', (error) => {
      current.delete(child)
      reject(error)
    })
    child.on('close', (code, signal) => {
      current.delete(child)
      resolve({ code: code ?? 1, signal, output })
    })
  })
}

/** Runs a JavaScript file of ours or of a package with this same Node. */
export const runNode = (args, options) => run(process.execPath, args, options)
