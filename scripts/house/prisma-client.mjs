import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { hashOf } from './hash-files.mjs'
import { inRoot } from './places.mjs'
import { runNode } from './run.mjs'
import { PlainError, sayProgress } from './say.mjs'

const stampFile = inRoot('generated', 'prisma', '.millrace-schema')

/** Writes the database client from prisma/schema.prisma, if it is not there or the schema changed. */
export async function ensurePrismaClient() {
  const hash = hashOf(['prisma/schema.prisma', 'node_modules/prisma/package.json'])
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash) return
  sayProgress('Writing the database client')
  const { code, output } = await runNode([inRoot('node_modules/prisma/build/index.js'), 'generate'], {
    quiet: true,
    env: { PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' },
  })
  if (code !== 0 || !existsSync(inRoot('generated/prisma/client.ts'))) {
    throw new PlainError('The database client could not be written from prisma/schema.prisma.', output)
  }
  writeFileSync(stampFile, hash)
}
