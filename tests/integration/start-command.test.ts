import { execFile } from 'node:child_process'
import { createServer, type Server } from 'node:http'
import { promisify } from 'node:util'
import { afterEach, describe, expect, test } from 'vitest'
import { listen } from '@/scripts/house/listen.mjs'
import { root } from './support/scratch-database'

const run = promisify(execFile)
const HOST = '127.0.0.1'

const servers: Server[] = []
function newServer(): Server {
  const server = createServer()
  servers.push(server)
  return server
}
afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => new Promise((resolve) => server.close(resolve))))
})

describe('the port', () => {
  test('is the next free one when the wanted one is taken and need not be kept', async () => {
    const taken = await listen(newServer(), HOST, { port: 0, isFixed: false })
    const got = await listen(newServer(), HOST, { port: taken, isFixed: false })
    expect(got).toBeGreaterThan(taken)
  })

  test('is not changed behind the back of someone who named it', async () => {
    const taken = await listen(newServer(), HOST, { port: 0, isFixed: true })
    await expect(listen(newServer(), HOST, { port: taken, isFixed: true })).rejects.toThrow(`Port ${taken} is already in use`)
  })
})

describe('npm start says in one sentence what is wrong with', () => {
  const failureOf = async (args: string[], env: Record<string, string>): Promise<string> => {
    const outcome: unknown = await run(process.execPath, ['scripts/start.mjs', ...args], { cwd: root, env: { ...process.env, ...env } }).catch((error: unknown) => error)
    return String((outcome as { stderr?: unknown }).stderr)
  }

  test.each(['0', '70000', 'http', '30.5'])('PORT=%s', async (port) => {
    expect(await failureOf([], { PORT: port })).toBe(`PORT is "${port}" and must be a whole number from 1 to 65535.\n`)
  })

  test('an option it does not know', async () => {
    expect(await failureOf(['--set-aside'], {})).toBe('npm start does not know "--set-aside"; the one option is --set-aside-database.\n')
  })
})
