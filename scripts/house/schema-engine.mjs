/**
 * The database schema engine, from its WebAssembly build: it comes with the packages, so nothing
 * is downloaded, and it is the same on every system. `npm start` applies migrations with it, and
 * `scripts/schema-engine.mjs` lends it to the Prisma commands a developer runs.
 */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { PrismaLibSql } from '@prisma/adapter-libsql'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'

let glue
let lastPanic = ''

// The engine leaves the words of a panic here before it traps.
globalThis.PRISMA_WASM_PANIC_REGISTRY = { set_message: (message) => (lastPanic = message) }

/** What the engine said when it gave up, for an error message. */
export const panicMessage = () => lastPanic

async function loadGlue() {
  if (glue) return glue
  const name = '@prisma/schema-engine-wasm/schema_engine_bg'
  const bg = await import(name)
  const file = path.join(path.dirname(fileURLToPath(import.meta.resolve(name))), 'schema_engine_bg.wasm')
  const { instance } = await WebAssembly.instantiate(readFileSync(file), { './schema_engine_bg.js': bg })
  bg.__wbg_set_wasm(instance.exports)
  instance.exports.__wbindgen_start()
  glue = bg
  return glue
}

/**
 * Two differences between what the engine expects of a database and what the driver does:
 * - the driver puts its error code before the message ("SQLITE_ERROR: no such table"), which keeps
 *   the adapter from seeing that a table is missing, and the engine from making its own;
 * - a script of several statements sent as one statement would run only its first.
 */
class EngineAdapter extends PrismaLibSql {
  createClient(config) {
    const client = super.createClient(config)
    const execute = client.execute.bind(client)
    client.execute = (statement) =>
      execute(statement).catch((error) => {
        if (typeof error?.message === 'string') error.message = error.message.replace(/^SQLITE_[A-Z_]+: /, '')
        throw error
      })
    return client
  }

  connect = () => super.connect().then(withScripts)
  connectToShadowDb = () => super.connectToShadowDb().then(withScripts)
}

function withScripts(connection) {
  const executeRaw = connection.executeRaw.bind(connection)
  connection.executeRaw = async (query) => {
    if (query.args.length > 0) return executeRaw(query)
    await connection.executeScript(query.sql)
    return 0
  }
  return connection
}

/**
 * @param url        of the database file, `file:/…`
 * @param datamodels pairs of schema file name and text; none is said by leaving it out
 * @returns the engine, its methods named as in the engine's own protocol
 */
export async function openSchemaEngine(url, datamodels = undefined) {
  const { SchemaEngine } = await loadGlue()
  const factory = bindMigrationAwareSqlAdapterFactory(new EngineAdapter({ url, timeout: 10_000 }))
  // An empty list makes the engine panic.
  const options = { datamodels: datamodels?.length ? datamodels : undefined }
  return SchemaEngine.new(options, () => {}, factory)
}

/** Removes every table of the database file: the engine's own reset leaves those of SQLite in place. */
export async function dropTables(url) {
  const connection = await new EngineAdapter({ url }).connect()
  const { rows } = await connection.queryRaw({
    sql: "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
    args: [],
    argTypes: [],
  })
  const drops = rows.map(([name]) => `DROP TABLE "${name}";`).join('\n')
  await connection.executeScript(`PRAGMA foreign_keys = off;\n${drops}\nPRAGMA foreign_keys = on;`)
  await connection.dispose()
}
