import { createHash } from 'node:crypto'
import type { DataSet } from '@/lib/plan'

/** The demo data has no date of its own: it is invented. */
const DEMO_DAY = '2026-01-01'

/** How the documents name a data set that was imported from a file of the demo. */
export const demoDataSet = (bytes: Uint8Array, name: string): DataSet => ({
  hash: createHash('sha256').update(bytes).digest('hex'), name, attribution: 'Invented map of the Millrace demo; public domain', importedOn: DEMO_DAY, dataDate: DEMO_DAY,
})
