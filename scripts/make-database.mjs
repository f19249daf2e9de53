/**
 * Makes or updates the database in MILLRACE_DATA and nothing else.
 *
 *   node scripts/make-database.mjs [--demo]     --demo puts the demonstration district in, if the database is empty
 */
import { databaseFile } from './house/places.mjs'
import { runMain } from './house/say.mjs'
import { setUpDatabase } from './house/set-up.mjs'

await runMain(async () => {
  const { migrateDatabase } = await import('./house/database.mjs')
  if (process.argv.includes('--demo')) await setUpDatabase()
  else await migrateDatabase(databaseFile())
})
