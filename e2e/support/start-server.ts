import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { createInterface } from 'node:readline'

export type RunningServer = { address: string; stop(): Promise<void> }

/**
 * Starts the built app with a database of its own.
 *
 * @param settings environment beside the usual; `PORT` is any free one unless given
 * @throws Error with what the server said if it ends before it is ready
 */
export async function startServer(dataFolder: string, settings: Readonly<Record<string, string>> = {}): Promise<RunningServer> {
  const child = spawn(process.execPath, ['scripts/serve.mjs'], {
    cwd: path.resolve(import.meta.dirname, '../..'),
    env: { ...process.env, MILLRACE_DATA: dataFolder, PORT: '0', NODE_ENV: 'production', ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  child.stderr.on('data', (part: Buffer) => (said += part.toString()))
  const address = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).on('line', (line) => {
      said += `${line}\n`
      if (line.startsWith('http://')) resolve(line)
    })
    child.once('exit', (code) => reject(new Error(`the server ended with code ${code}:\n${said}`)))
  })
  return {
    address,
    stop: async () => {
      if (child.exitCode !== null) throw new Error(`the server ended by itself with code ${child.exitCode}:\n${said}`)
      child.kill('SIGTERM')
      await once(child, 'exit')
    },
  }
}
