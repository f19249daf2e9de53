/**
 * npm start: from a bare clone to a running app, in one command.
 *
 *   npm start -- --set-aside-database    keep the present database under a dated name, begin with an empty one
 *
 * PORT, MILLRACE_HOST, MILLRACE_DATA and MILLRACE_BUILD move things; see README.md.
 */
import path from 'node:path'
import { ensureBuild } from './house/build.mjs'
import { buildFolder, databaseFile, dataFolder } from './house/places.mjs'
import { PlainError, runMain, say } from './house/say.mjs'
import { setUpDatabase, setUpTools } from './house/set-up.mjs'

const FLAG = '--set-aside-database'

function readPort() {
  const text = process.env.PORT
  if (!text) return { port: 3000, isFixed: false }
  const port = Number(text)
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new PlainError(`PORT is "${text}" and must be a whole number from 1 to 65535.`)
  }
  return { port, isFixed: true }
}

function readFlags() {
  const flags = process.argv.slice(2)
  const unknown = flags.find((flag) => flag !== FLAG)
  if (unknown) throw new PlainError(`npm start does not know "${unknown}"; the one option is ${FLAG}.`)
  return { isSettingAside: flags.includes(FLAG) }
}

/** Ends on Ctrl-C: running requests are cut, the database file is closed by the end of the process. */
function endOnSignal(stop) {
  let isEnding = false
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.on(signal, async () => {
      if (isEnding) return
      isEnding = true
      await stop().catch(() => undefined)
      process.exit(0)
    })
  }
}

await runMain(async () => {
  const { isSettingAside } = readFlags()
  const { port, isFixed } = readPort()
  const host = process.env.MILLRACE_HOST || '127.0.0.1'
  await setUpTools()
  if (isSettingAside) {
    const { setAsideDatabase } = await import('./house/database.mjs')
    const aside = setAsideDatabase(databaseFile())
    say(aside ? `The old database is kept as ${path.relative(process.cwd(), aside)}` : 'There was no database to set aside')
  }
  await setUpDatabase()
  await ensureBuild()
  // The server reads these; said once here so that every part agrees.
  process.env.MILLRACE_DATA = dataFolder()
  process.env.MILLRACE_BUILD = buildFolder()
  // What it is made of needs packages, which are there only now.
  const { serve } = await import('./house/serve.mjs')
  const server = await serve({ host, port, isFixed })
  endOnSignal(server.stop)
  if (server.port !== port) say(`Port ${port} is in use, so port ${server.port} is taken instead`)
  say(`Millrace is ready: ${server.address}`)
})
