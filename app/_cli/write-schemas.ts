import { mkdir, writeFile } from 'node:fs/promises'
import { jsonSchemas } from './json-schemas'

/** Writes the JSON Schemas of bundle and result into public/schemas. Run after a change to either: `npx tsx app/_cli/write-schemas.ts`. */
const folder = new URL('../../public/schemas/', import.meta.url)
await mkdir(folder, { recursive: true })
for (const [name, text] of Object.entries(jsonSchemas())) await writeFile(new URL(name, folder), text)
