import { PrismaLibSql } from '@prisma/adapter-libsql'

type Config = Parameters<PrismaLibSql['createClient']>[0]
type Client = ReturnType<PrismaLibSql['createClient']>
type Transaction = Awaited<ReturnType<Client['transaction']>>
type Statement = Parameters<Transaction['execute']>[0]

const GIVE_UP_AFTER_ms = 30_000
const LONGEST_PAUSE_ms = 10

/**
 * The adapter, with three differences to the driver by itself:
 * - every transaction is on the one connection there already is; the driver would open a new one after each;
 * - a transaction holds the write lock from its first statement, so that it never finds at its first
 *   write that it came too late. The adapter lets nothing else run on the connection until it ends;
 * - when another process holds the lock, it waits without stopping this one: the driver's own wait would.
 */
export class OneConnection extends PrismaLibSql {
  override createClient(config: Config): Client {
    const client = super.createClient(config)
    const execute = client.execute.bind(client)
    client.execute = (statement: Statement) => whenFree(() => execute(statement))
    client.transaction = async () => {
      await client.execute('BEGIN IMMEDIATE')
      return transactionOn(client)
    }
    return client
  }
}

async function whenFree<T>(work: () => Promise<T>): Promise<T> {
  const giveUpAt = Date.now() + GIVE_UP_AFTER_ms
  for (let pause_ms = 1; ; pause_ms = Math.min(2 * pause_ms, LONGEST_PAUSE_ms)) {
    try {
      return await work()
    } catch (error) {
      const isBusy = error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY'
      if (!isBusy || Date.now() > giveUpAt) throw error
      await new Promise((resolve) => setTimeout(resolve, pause_ms))
    }
  }
}

function transactionOn(client: Client): Transaction {
  let closed = false
  const end = async (statement: 'COMMIT' | 'ROLLBACK') => {
    if (closed) return
    closed = true
    await client.execute(statement)
  }
  const execute = (statement: Statement) => client.execute(statement)
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
        await client.execute('ROLLBACK').catch(() => undefined)
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
