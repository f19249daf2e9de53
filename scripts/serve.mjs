/**
 * Serves the app as it is built, with the database as it is; used by the browser tests.
 *
 *   node scripts/serve.mjs       PORT=0 takes any free port; the address is the one line it prints
 */
import { databaseFile } from './house/places.mjs'
import { runMain, say } from './house/say.mjs'
import { serve } from './house/serve.mjs'

await runMain(async () => {
  const { migrateDatabase } = await import('./house/database.mjs')
  await migrateDatabase(databaseFile())
  const { address, stop } = await serve({ host: '127.0.0.1', port: Number(process.env.PORT ?? 0), isFixed: true })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => void stop().finally(() => process.exit(0)))
  say(address)
})
