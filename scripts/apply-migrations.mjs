/**
 * Applies the migrations that a database file lacks.
 *
 *   node scripts/apply-migrations.mjs FILE
 */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { listMigrations, migrationsFolder } from './house/migrations.mjs'
import { urlOfFile } from './house/places.mjs'
import { openSchemaEngine } from './house/schema-engine.mjs'

const lockfile = 'migration_lock.toml'
const engine = await openSchemaEngine(urlOfFile(path.resolve(process.argv[2])))
await engine.applyMigrations({
  migrationsList: {
    baseDir: migrationsFolder,
    lockfile: { path: lockfile, content: readFileSync(path.join(migrationsFolder, lockfile), 'utf8') },
    shadowDbInitScript: '',
    migrationDirectories: listMigrations().map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: sql } },
    })),
  },
  filters: { externalTables: [], externalEnums: [] },
})
