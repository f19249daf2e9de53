import { PrismaLibSql } from '@prisma/adapter-libsql'

type Config = Parameters<PrismaLibSql['createClient']>[0]
type Client = ReturnType<PrismaLibSql['createClient']>
type Transaction = Awaited<ReturnType<Client['transaction']>>
type Statement = Parameters<Transaction['execute']>[0]

/** What each connection is told: on disk before it is acknowledged, and rows that are referred to stay. */
const SETTINGS = ['PRAGMA journal_mode = WAL', 'PRAGMA synchronous = FULL', 'PRAGMA foreign_keys = ON']

/** The driver's own wait stops this whole process, so it is short, and repeated with pauses. */
const DRIVER_WAIT_ms = 200
const PAUSE_ms = 20
const GIVE_UP_AFTER_ms = 30_000

/**
 * The adapter, with three differences to the driver by itself:
 * - every transaction is on the one connection there already is; the driver would open a new one after each;
 * - a transaction holds the write lock from its first statement, so that it never finds at its first
 *   write that it came too late. The adapter lets nothing else run on the connection until it ends;
 * - when another process holds the lock, it waits for its turn.
 */
export class OneConnection extends PrismaLibSql {
  constructor(url: string) {
    super({ url, timeout: DRIVER_WAIT_ms })
  }

  override createClient(config: Config): Client {
    const client = super.createClient(config)
    const execute = client.execute.bind(client)
    const settle = async () => {
      for (const setting of SETTINGS) await execute(setting)
    }
    const settled = settle()
    settled.catch(() => undefined)
    client.execute = async (statement: Statement) => {
      await settled
      return whenFree(client, settle, () => execute(statement))
    }
    client.transaction = async () => {
      await client.execute('BEGIN IMMEDIATE')
      return transactionOn(execute)
    }
    return client
  }
}

/**
 * A statement that was turned away stays half open in the driver and would keep every later
 * transaction from ending, so each new try is on a fresh connection.
 */
async function whenFree<T>(client: Client, settle: () => Promise<void>, work: () => Promise<T>): Promise<T> {
  const giveUpAt = Date.now() + GIVE_UP_AFTER_ms
  for (;;) {
    try {
      return await work()
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY')) throw error
      await client.reconnect()
      await settle()
      if (Date.now() > giveUpAt) throw error
      await new Promise((resolve) => setTimeout(resolve, PAUSE_ms))
    }
  }
}

function transactionOn(execute: Transaction['execute']): Transaction {
  let closed = false
  const end = async (statement: 'COMMIT' | 'ROLLBACK') => {
    if (closed) return
    closed = true
    await execute(statement)
  }
  return {
    execute,
    batch: async (statements) => {
      const results = []
      for (const statement of statements) results.push(await execute(statement))
      return results
    },
    executeMultiple: () => Promise.reject(new RangeError('statement is a script, must be one statement inside a transaction')),
    commit: async () => {
      try {
        await end('COMMIT')
      } catch (error) {
        // A full disk, say: the connection must not stay inside a transaction that has failed.
        await execute('ROLLBACK').catch(() => undefined)
        throw error
      }
    },
    rollback: () => end('ROLLBACK'),
    close: () => void end('ROLLBACK').catch(() => undefined),
    get closed() {
      return closed
    },
  }
}
