import { createHash } from 'node:crypto'
import type { DataSet, TerrainSet } from '@/lib/plan'
import type { ElevationImport } from '../_worker/elevation/import-elevation'

/** The demo data has no date of its own: it is invented. */
const DEMO_DAY = '2026-01-01'

/** How the documents name a data set that was imported from a file of the demo. */
export const demoDataSet = (bytes: Uint8Array, name: string): DataSet => ({
  hash: createHash('sha256').update(bytes).digest('hex'), name, attribution: 'Invented map of the Millrace demo; public domain', importedOn: DEMO_DAY, dataDate: DEMO_DAY,
})

/** Its heights are the invented ground itself, to the decimetre at each sample: the demo states so much for the ground between. */
const DEMO_DOUBT_FT = 3

/** The same of the demo's heights. */
export const demoTerrainSet = ({ terrainBlob, summary }: ElevationImport, name: string): TerrainSet => ({
  ...demoDataSet(terrainBlob, name), verticalDoubt_ft: DEMO_DOUBT_FT, doubtBasis: 'stated', step_ft: summary.step_ft,
})
