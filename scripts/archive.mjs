/** npm run -s archive: a district in one file, saved, checked and brought in, and the backups of the database. */
import { databaseFile, inRoot } from './house/places.mjs'
import { runTypeScript } from './house/run-typescript.mjs'
import { runMain } from './house/say.mjs'
import { setUpTools } from './house/set-up.mjs'

await runMain(async () => {
  await setUpTools()
  // A file is checked without a database; everything else needs it at its newest shape.
  if (['save', 'list', 'restore'].includes(process.argv[2])) {
    const { migrateDatabase } = await import('./house/database.mjs')
    await migrateDatabase(databaseFile())
  }
  // Paths are read from the folder the command was typed in.
  const cwd = process.env.INIT_CWD ?? process.cwd()
  const { code } = await runTypeScript([inRoot('app', '_cli', 'archive.ts'), ...process.argv.slice(2)], { cwd, env: { MILLRACE_DATABASE: databaseFile() } })
  return code
})
