import { existsSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { PrismaClient } from '@/generated/prisma/client'
import { OneConnection } from './one-connection'

export type Database = PrismaClient

/**
 * Opens a database file that `npm start` has made and checked.
 *
 * @throws Error if there is no such file: making one here would hide that the right one is missing
 */
export async function openDatabase(file: string): Promise<Database> {
  if (!existsSync(file)) throw new Error(`there is no database at ${file}: npm start makes one`)
  const database = new PrismaClient({
    adapter: new OneConnection(pathToFileURL(file).href),
    transactionOptions: { maxWait: 60_000, timeout: 60_000 },
  })
  await database.$connect()
  return database
}

/** File of this server's database: in the folder MILLRACE_DATA, or `data`. */
export const databaseFile = (): string => path.resolve(process.env.MILLRACE_DATA || 'data', 'millrace.db')

// Kept on the global object: the server loads this module once for each of its parts.
const held = globalThis as typeof globalThis & { millraceDatabase?: Promise<Database> }

/** This server's database, opened at the first call. */
export function getDatabase(): Promise<Database> {
  held.millraceDatabase ??= openDatabase(databaseFile()).catch((error: unknown) => {
    delete held.millraceDatabase
    throw error
  })
  return held.millraceDatabase
}
