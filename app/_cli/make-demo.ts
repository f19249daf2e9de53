import { mkdir, writeFile } from 'node:fs/promises'
import { gzipSync } from 'node:zlib'
import { buildDemo } from '@/app/_demo/build-demo'
import { demoFiles, demoFolder } from '@/app/_demo/demo-files'

/** Writes the demo district into public/demo. Run after a change to app/_demo, lib/osm, lib/roads or the documents: `npx tsx app/_cli/make-demo.ts`. */
const demo = await buildDemo()
await mkdir(new URL('bundles/', demoFolder), { recursive: true })
const write = (name: string, content: string | Uint8Array): Promise<void> => writeFile(new URL(name, demoFolder), content)
const pretty = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`

await write(demoFiles.map, gzipSync(demo.map, { level: 9 }))
await write(demoFiles.elevation, demo.elevation)
await write(demoFiles.district, pretty(demo.district))
await write(demoFiles.plans, pretty(demo.plans))
for (const bundle of demo.bundles) await write(demoFiles.bundleOf(bundle.plan.id), `${JSON.stringify(bundle)}\n`)
