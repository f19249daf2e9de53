import { cpSync, rmSync } from 'node:fs'
import { test as base, expect, type ConsoleMessage } from '@playwright/test'
import { startServer, type RunningServer } from './start-server'
import { folderOfWorker, TEMPLATES, type TemplateKind } from './templates'

type WorkerFixtures = {
  /** What the database holds at first: `demo`, or `empty`. Set with `test.use({ database: 'empty' })` at the top of a file. */
  database: TemplateKind
  server: RunningServer
}

type Fixtures = {
  /** Console errors that a test brings about on purpose; every other one fails it. */
  expectedErrors: RegExp[]
  quietConsole: undefined
}

/** The test function of every journey: a server and database for each worker, and no error on the console. */
export const test = base.extend<Fixtures, WorkerFixtures>({
  database: ['demo', { option: true, scope: 'worker' }],
  server: [
    async ({ database }, provide, { workerIndex }) => {
      const folder = folderOfWorker(database, workerIndex)
      rmSync(folder, { recursive: true, force: true })
      cpSync(TEMPLATES[database], folder, { recursive: true })
      const server = await startServer(folder)
      await provide(server)
      await server.stop()
      rmSync(folder, { recursive: true, force: true })
    },
    { scope: 'worker' },
  ],
  baseURL: async ({ server }, provide) => provide(server.address),
  expectedErrors: [[], { option: true }],
  quietConsole: [
    async ({ context, expectedErrors }, provide) => {
      const errors: string[] = []
      const keep = (text: string) => {
        if (!expectedErrors.some((expected) => expected.test(text))) errors.push(text)
      }
      context.on('console', (message: ConsoleMessage) => {
        if (message.type() === 'error') keep(`${message.text()} (${message.location().url})`)
      })
      context.on('weberror', (error) => keep(error.error().stack ?? error.error().message))
      await provide(undefined)
      expect(errors, 'errors on the console').toEqual([])
    },
    { auto: true },
  ],
})

export { expect }
