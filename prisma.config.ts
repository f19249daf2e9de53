import { fileURLToPath } from 'node:url'
import { defineConfig } from 'prisma/config'
import { databaseUrl } from './scripts/house/places.mjs'

// The engine has to be an executable file; ours needs nothing downloaded.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= fileURLToPath(new URL('scripts/schema-engine.mjs', import.meta.url))

export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: databaseUrl() },
})
