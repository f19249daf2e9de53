import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { hydraulicsAccuracy } from '../tests/reference/hydraulics-accuracy'

/** Writes lib/hydraulics/ACCURACY.md from the reference cases: run under tsx when a case or a law changes. */
writeFileSync(fileURLToPath(new URL('../lib/hydraulics/ACCURACY.md', import.meta.url)), hydraulicsAccuracy())
