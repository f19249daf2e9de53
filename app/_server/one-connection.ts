import { PrismaLibSql } from '@prisma/adapter-libsql'

type Config = Parameters<PrismaLibSql['createClient']>[0]
type Client = ReturnType<PrismaLibSql['createClient']>
type Transaction = Awaited<ReturnType<Client['transaction']>>

/**
 * The adapter, with every transaction on the one connection it already has and holding the write
 * lock from its first statement. The driver by itself would open a new connection after each
 * transaction, and begin it as a reader that may find, at its first write, that it came too late.
 * The adapter lets nothing else run on the connection until the transaction ends.
 */
export class OneConnection extends PrismaLibSql {
  override createClient(config: Config): Client {
    const client = super.createClient(config)
    client.transaction = async () => {
      await client.execute('BEGIN IMMEDIATE')
      return transactionOn(client)
    }
    return client
  }
}

function transactionOn(client: Client): Transaction {
  let closed = false
  const end = async (statement: 'COMMIT' | 'ROLLBACK') => {
    if (closed) return
    closed = true
    await client.execute(statement)
  }
  const execute = (statement: Parameters<Transaction['execute']>[0]) => client.execute(statement)
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
