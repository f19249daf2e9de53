#!/usr/bin/env node
/**
 * Lends the WebAssembly schema engine to the Prisma commands, which want an executable that speaks
 * JSON-RPC, one message a line, on its standard input and output.
 *
 *   schema-engine.mjs --datasource '{"url":"file:/…"}' [--datamodels FILE]…
 *   schema-engine.mjs --datasource '{"url":"file:/…"}' cli can-connect-to-database|create-database
 */
import { existsSync, readFileSync } from 'node:fs'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { dropTables, openSchemaEngine, panicMessage } from './house/schema-engine.mjs'

const args = process.argv.slice(2)
const datamodels = args.flatMap((arg, at) => (arg === '--datamodels' ? [args[at + 1]] : []))
const datasource = JSON.parse(args[args.indexOf('--datasource') + 1] ?? '{}')
const url = datasource.url ?? 'file::memory:'

/** The names that differ between the protocol and the engine's own methods. */
const RENAMED = { getDatabaseVersion: 'version' }

let opening
const openOnce = () => (opening ??= openSchemaEngine(url, datamodels.map((file) => [file, readFileSync(file, 'utf8')])))

/** An error as the engine words it: a JSON text in the message if it is one of its own. */
function errorFrom(thrown) {
  const text = thrown instanceof Error ? thrown.message : String(thrown)
  const known = { code: thrown?.code ?? thrown?.error_code, message: text, meta: thrown?.meta }
  return {
    code: 4466,
    message: 'An error happened. Check the data field for details.',
    data: { is_panic: false, message: known.message, meta: known.meta ?? null, error_code: known.code ?? null },
  }
}

async function answer({ id, method, params }) {
  if (method === 'createDatabase') return { id, jsonrpc: '2.0', result: { databaseName: url } }
  try {
    const engine = await openOnce()
    if (method === 'reset') await dropTables(url)
    const name = RENAMED[method] ?? method
    if (typeof engine[name] !== 'function') throw new Error(`the schema engine has no method ${method}`)
    return { id, jsonrpc: '2.0', result: (await engine[name](params)) ?? null }
  } catch (thrown) {
    return { id, jsonrpc: '2.0', error: errorFrom(thrown) }
  }
}

/** The reader of these lines leaves out the first one. */
function failLine(code, message) {
  const line = (level, fields) => `${JSON.stringify({ level, target: 'schema_engine::logger', fields })}\n`
  process.stderr.write(line('INFO', { message: 'schema engine' }) + line('ERROR', { message, error_code: code }))
  process.exitCode = 1
}

// A panic of the engine surfaces between two of its own steps, where no caller can catch it.
process.on('uncaughtException', (error) => {
  failLine(null, panicMessage() || error.message)
  process.exit(101)
})

if (args.includes('cli')) {
  const isMissing = url.startsWith('file:/') && !existsSync(fileURLToPath(url))
  if (args.at(-1) === 'can-connect-to-database' && isMissing) failLine('P1003', `there is no database file at ${url}`)
  else await openOnce().catch((error) => failLine('P1001', error.message))
} else {
  // One at a time, in order: the engine has one connection.
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    if (line.trim()) process.stdout.write(`${JSON.stringify(await answer(JSON.parse(line)))}\n`)
  }
}
