import type { Bounds } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import {
  HGT_DOUBT_FT, MARGIN_M, NO_HEIGHT, TENTHS_PER_METRE, assumedDoubt_ft, encodeHeightGrid, grown, isHgtName, makeGrid, readHgt, rowStep_deg, stepM,
  type DoubtBasis, type HeightGrid, type HeightSurface,
} from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'
import type { ElevationFile } from './elevation-file'
import { unpackZip } from './unpack-zip'

export type ElevationSummary = {
  readonly fileNames: readonly string[]
  readonly bounds: Bounds
  /** From one sample of the stored grid to the next. */
  readonly step_ft: number
  readonly sampleCount: number
  /** Share of the district that has heights. */
  readonly coveredShare: number
  readonly lowest_ft: number
  readonly highest_ft: number
  readonly verticalDoubt_ft: number
  readonly doubtBasis: DoubtBasis
}

export type ElevationImport = {
  readonly terrainBlob: Uint8Array<ArrayBuffer>
  readonly summary: ElevationSummary
  readonly issues: readonly Issue[]
}

export type ElevationOptions = {
  /** Of the district, without margin. */
  readonly bounds: Bounds
  readonly gunzip: (bytes: Uint8Array, maxBytes: number) => Promise<Uint8Array>
  readonly onProgress?: (doneShare: number) => Promise<void> | void
}

/** A tile of one arc-second, unpacked. */
const LARGEST_HGT_BYTES = 3601 * 3601 * 2
/** Rows of the grid made between two breaths. */
const ROWS_A_BREATH = 64
/** Of the whole work, what reading takes; the rest is making the grid. */
const READING_SHARE = 0.6

/**
 * Makes a district's heights from the elevation files the user chose: GeoTIFF, or tiles of SRTM, as they are or packed as .zip. Runs the same in a
 * worker and on the command line.
 *
 * @param files   one or more that together cover the district; where two overlap the first one's heights stand
 * @param options bounds of the district
 * @returns the blob with what it holds, or the one blocking issue that stopped it
 */
export async function importElevation(files: readonly ElevationFile[], { bounds, gunzip, onProgress }: ElevationOptions): Promise<ElevationImport | Issue> {
  const ask = grown(bounds, MARGIN_M)
  const surfaces: HeightSurface[] = [], issues: Issue[] = []
  let isAllHgt = true
  const opened = await openFiles(files)
  if ('code' in opened) return opened
  for (const [i, file] of opened.entries()) {
    const read = await readFile(file, ask, gunzip, (doneShare) => onProgress?.((READING_SHARE * (i + doneShare)) / opened.length))
    if ('code' in read) return { ...read, values: { file: file.name, ...read.values } }
    surfaces.push(read.surface)
    if (read.assumedUnit && !issues.some(({ values }) => values['unit'] === read.assumedUnit)) issues.push(issue('elevation-unit-assumed', 'warn', [], { unit: read.assumedUnit }))
    isAllHgt &&= isHgtName(file.name)
  }
  if (surfaces.length === 0) return issue('elevation-no-file', 'block')
  const step_deg = Math.min(...surfaces.map((surface) => surface.step_deg))
  const work = makeGrid(surfaces, {
    bounds,
    verticalDoubt_ft: isAllHgt ? HGT_DOUBT_FT : assumedDoubt_ft(step_deg),
    doubtBasis: isAllHgt ? 'published' : 'assumed',
  })
  let rows = 0
  for (;;) {
    const turn = work.next()
    if (turn.done) {
      if ('code' in turn.value) return { ...turn.value, values: { file: files[0]?.name ?? '', ...turn.value.values } }
      const { grid, coveredShare } = turn.value
      await onProgress?.(1)
      return { terrainBlob: encodeHeightGrid(grid), summary: summaryOf(files, bounds, grid, coveredShare), issues: [...issues, ...turn.value.issues] }
    }
    if (++rows % ROWS_A_BREATH === 0) await onProgress?.(READING_SHARE + (1 - READING_SHARE) * turn.value)
  }
}

/** The files themselves, and those inside the packed ones. */
async function openFiles(files: readonly ElevationFile[]): Promise<ElevationFile[] | Issue> {
  const opened: ElevationFile[] = []
  for (const file of files) {
    const head = new Uint8Array(await file.blob.slice(0, 4).arrayBuffer())
    const inside = findKind(head) === 'zip' ? await unpackZip(file) : [file]
    if ('code' in inside) return { ...inside, values: { file: file.name, ...inside.values } }
    opened.push(...inside)
  }
  return opened
}

type ReadSurface = { surface: HeightSurface; assumedUnit?: 'm' | 'ft' }

async function readFile({ name, blob }: ElevationFile, ask: Bounds, gunzip: ElevationOptions['gunzip'], onProgress: (doneShare: number) => Promise<void> | void): Promise<ReadSurface | Issue> {
  const head = new Uint8Array(await blob.slice(0, 4).arrayBuffer())
  if (isHgtName(name)) {
    if (blob.size > LARGEST_HGT_BYTES) return issue('elevation-hgt-size', 'block', [], { byteCount: blob.size })
    const bytes = new Uint8Array(await blob.arrayBuffer())
    const isPacked = head[0] === 0x1f && head[1] === 0x8b
    const unpacked = isPacked ? await gunzip(bytes, LARGEST_HGT_BYTES).catch(() => undefined) : bytes
    if (!unpacked) return issue('elevation-damaged', 'block', [], { reason: 'gzip' })
    const surface = readHgt(unpacked, name)
    return 'code' in surface ? surface : { surface }
  }
  const found = findKind(head)
  if (found !== 'tiff') return issue('elevation-not-elevation', 'block', [], { found })
  // The reader of GeoTIFF is large: it comes when one is there.
  const { readElevationTiff } = await import('./read-elevation-tiff')
  return readElevationTiff(blob, ask, onProgress)
}

/** What the first bytes of a file say it is. */
function findKind(head: Uint8Array): string {
  const [a, b, c, d] = head
  const order = a === 0x49 && b === 0x49 ? 'little' : a === 0x4d && b === 0x4d ? 'big' : ''
  const magic = order === 'little' ? c : d
  if (order !== '' && (magic === 42 || magic === 43)) return 'tiff'
  if (a === 0x50 && b === 0x4b) return 'zip'
  if (a === 0x1f && b === 0x8b) return 'gzip'
  if (a === 0x89 && b === 0x50) return 'png'
  if (a === 0xff && b === 0xd8) return 'jpeg'
  return head.length === 0 ? 'empty' : 'other'
}

function summaryOf(files: readonly ElevationFile[], bounds: Bounds, grid: HeightGrid, coveredShare: number): ElevationSummary {
  let low = Infinity, high = -Infinity
  for (const sample of grid.samples) {
    if (sample === NO_HEIGHT) continue
    low = Math.min(low, sample)
    high = Math.max(high, sample)
  }
  return {
    fileNames: files.map(({ name }) => name), bounds, coveredShare, sampleCount: grid.samples.length,
    step_ft: feetFromMetres(stepM(rowStep_deg(grid))),
    lowest_ft: feetFromMetres(grid.base_m + low / TENTHS_PER_METRE), highest_ft: feetFromMetres(grid.base_m + high / TENTHS_PER_METRE),
    verticalDoubt_ft: grid.verticalDoubt_ft, doubtBasis: grid.doubtBasis,
  }
}
