/** What must be so before anything of ours runs; each step does nothing when it already is. */
import { existsSync } from 'node:fs'
import { ensureDependencies } from './dependencies.mjs'
import { requireNode } from './node-version.mjs'
import { databaseFile, inRoot } from './places.mjs'
import { ensurePrismaClient } from './prisma-client.mjs'
import { runTypeScript } from './run-typescript.mjs'
import { PlainError, sayProgress } from './say.mjs'

export async function setUpTools() {
  requireNode()
  await ensureDependencies()
  await ensurePrismaClient()
}

/** The database at its newest shape, with the demonstration district in it if it holds nothing. */
export async function setUpDatabase() {
  const { isDatabaseEmpty, migrateDatabase } = await import('./database.mjs')
  await migrateDatabase(databaseFile())
  const seed = inRoot('app', '_cli', 'seed-demo.ts')
  if (!existsSync(seed) || !(await isDatabaseEmpty(databaseFile()))) return
  sayProgress('Adding the demonstration district')
  const { code, output } = await runTypeScript([seed], { quiet: true })
  if (code !== 0) throw new PlainError('The demonstration district could not be added to the database.', output)
}
