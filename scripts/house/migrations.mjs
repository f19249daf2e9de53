/** The migrations, and whether a database has the shape they make. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { PrismaLibSql } from '@prisma/adapter-libsql'
import { inRoot } from './places.mjs'

export const migrationsFolder = inRoot('prisma', 'migrations')

/** Name and text of each, oldest first. */
export function listMigrations() {
  return readdirSync(migrationsFolder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => ({ name, sql: readFileSync(path.join(migrationsFolder, name, 'migration.sql'), 'utf8') }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
}

/** A plain connection to a database file, for what the scripts ask of it. */
export async function connect(url) {
  const connection = await new PrismaLibSql({ url, timeout: 10_000 }).connect()
  const rows = async (sql) => (await connection.queryRaw({ sql, args: [], argTypes: [] })).rows
  return { rows, script: (sql) => connection.executeScript(sql), close: () => connection.dispose() }
}

const SHAPE =
  "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' AND name <> '_prisma_migrations' ORDER BY type, name"

/** True if the file's tables, indexes and triggers are, to the letter, those that the migrations make. */
export async function hasShapeOf(database, migrations) {
  const wanted = await connect('file::memory:')
  try {
    for (const { sql } of migrations) await wanted.script(sql)
    return JSON.stringify(await wanted.rows(SHAPE)) === JSON.stringify(await database.rows(SHAPE))
  } finally {
    await wanted.close()
  }
}
