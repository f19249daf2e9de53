import { GeoTIFF, type GeoTIFFImage } from 'geotiff'
import type { Bounds } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import { areMeeting, findRasterValue, gridStep_deg, type HeightSurface } from '@/lib/terrain'
import { BlobSource } from './blob-source'
import { findFrame, findWindow } from './raster-frame'
import { verticalUnit } from './vertical-unit'

/** `assumedUnit`: the unit the heights were taken to be in, where the file does not say. */
export type TiffSurface = { readonly surface: HeightSurface; readonly assumedUnit?: 'm' | 'ft' }

/** Samples kept of one file after averaging: 64 MB. */
const MOST_KEPT = 16_000_000
/** Rows read at once, so that progress is seen and no more than a strip is in memory. */
const STRIP_ROWS = 256

/**
 * Reads the heights of a GeoTIFF that lie over a district; nothing else of the file is decoded.
 *
 * Where its samples are finer than a grid of the district can hold, squares of them are averaged.
 *
 * @param file   GeoTIFF or BigTIFF, of any size, tiled or striped, whole numbers or floats
 * @param bounds of the district with its margin
 * @returns the surface in metres, or the one issue that stopped it: `elevation-not-heights`, `elevation-no-place`,
 *   `elevation-projection`, `elevation-rotated`, `elevation-truncated`, `elevation-damaged`, `elevation-too-fine`
 */
export async function readElevationTiff(file: Blob, bounds: Bounds, onProgress: (doneShare: number) => Promise<void> | void): Promise<TiffSurface | Issue> {
  try {
    const tiff = await GeoTIFF.fromSource(new BlobSource(file))
    const image = await tiff.getImage(0)
    return findKindFault(image) ?? (await findTruncation(image, file.size)) ?? (await readImage(image, bounds, onProgress))
  } catch (error) {
    return issue('elevation-damaged', 'block', [], { reason: (error as Error).message })
  }
}

/** What an image is when it is no elevation. */
function findKindFault(image: GeoTIFFImage): Issue | undefined {
  const notHeights = (reason: string) => issue('elevation-not-heights', 'block', [], { reason })
  const photometric = Number(image.getFileDirectory().getValue('PhotometricInterpretation') ?? 1)
  if (photometric === 3) return notHeights('palette')
  if (photometric > 1) return notHeights('colour')
  if (image.getSamplesPerPixel() !== 1) return notHeights('bands')
  if (image.getBitsPerSample(0) <= 8) return notHeights('bits')
  return undefined
}

/** Every piece of the image must lie within the file. */
async function findTruncation(image: GeoTIFFImage, size: number): Promise<Issue | undefined> {
  const directory = image.getFileDirectory()
  const [offsets, counts] = image.isTiled
    ? [await directory.loadValue('TileOffsets'), await directory.loadValue('TileByteCounts')]
    : [await directory.loadValue('StripOffsets'), await directory.loadValue('StripByteCounts')]
  if (!offsets || !counts) return issue('elevation-damaged', 'block', [], { reason: 'no image data' })
  const byteCounts = Array.from(counts as ArrayLike<number>, Number)
  const end = Array.from(offsets as ArrayLike<number>, Number).reduce((most, offset, i) => Math.max(most, offset + (byteCounts[i] ?? 0)), 0)
  return end > size ? issue('elevation-truncated', 'block') : undefined
}

async function readImage(image: GeoTIFFImage, bounds: Bounds, onProgress: (doneShare: number) => Promise<void> | void): Promise<TiffSurface | Issue> {
  const frame = findFrame(image)
  if ('code' in frame) return frame
  const metadata = await image.getGDALMetadata(0)
  const { unit_m, assumedUnit } = verticalUnit(image.getGeoKeys() ?? {}, metadata?.['UNITTYPE'])
  const factor = numberOr(metadata?.['SCALE'], 1) * unit_m, offset_m = numberOr(metadata?.['OFFSET'], 0) * unit_m
  const toMetres = (value: number) => value * factor + offset_m
  const nothing: HeightSurface = { bounds: frame.bounds, step_deg: frame.step_deg, findHeightM: () => undefined }
  const window = areMeeting(frame.bounds, bounds) ? findWindow(frame, bounds) : undefined
  if (!window) return { surface: nothing, assumedUnit }

  const noData = image.getGDALNoData()
  const isNoData = (value: number) => value === noData || (noData !== null && value === Math.fround(noData))
  const squareSide = Math.max(1, Math.floor(gridStep_deg(bounds, frame.step_deg) / frame.step_deg + 1e-6))
  const columnCount = Math.floor((window.right - window.left) / squareSide), rowCount = Math.floor((window.bottom - window.top) / squareSide)
  if (columnCount < 1 || rowCount < 1) return { surface: nothing, assumedUnit }
  if (columnCount * rowCount > MOST_KEPT) return issue('elevation-too-fine', 'block')
  const heights_m = new Float32Array(columnCount * rowCount)
  const rowsAtOnce = Math.max(1, Math.floor(STRIP_ROWS / squareSide))
  for (let first = 0; first < rowCount; first += rowsAtOnce) {
    const last = Math.min(rowCount, first + rowsAtOnce)
    const right = window.left + columnCount * squareSide
    const [values] = await image.readRasters({
      window: [window.left, window.top + first * squareSide, right, window.top + last * squareSide], samples: [0], interleave: false,
    })
    if (!values) return issue('elevation-damaged', 'block', [], { reason: 'no samples' })
    for (let row = first; row < last; row++) {
      for (let column = 0; column < columnCount; column++) {
        heights_m[row * columnCount + column] = toMetres(meanOf(values, (row - first) * squareSide, column * squareSide, columnCount * squareSide, squareSide, isNoData))
      }
    }
    await onProgress(last / rowCount)
  }
  const shift = (squareSide - 1) / 2
  const surface: HeightSurface = {
    bounds: frame.bounds, step_deg: frame.step_deg * squareSide,
    ...(squareSide === 1 && frame.lattice && { lattice: frame.lattice }),
    findHeightM: (lat, lon) => {
      const [column, row] = frame.toSample(lat, lon)
      return findRasterValue(heights_m, rowCount, columnCount, (row - window.top - shift) / squareSide, (column - window.left - shift) / squareSide)
    },
  }
  return { surface, assumedUnit }
}

/** Mean of a square of samples; not a number where none of them has a height. */
function meanOf(values: ArrayLike<number>, row: number, column: number, width: number, side: number, isNoData: (value: number) => boolean): number {
  let sum = 0, count = 0
  for (let r = row; r < row + side; r++) {
    for (let c = column; c < column + side; c++) {
      const value = values[r * width + c]
      if (value === undefined || !Number.isFinite(value) || isNoData(value)) continue
      sum += value
      count++
    }
  }
  return count > 0 ? sum / count : NaN
}

/** A number written as text or given as one; anything else stands for the usual. */
function numberOr(value: unknown, otherwise: number): number {
  const found = value === undefined || value === '' ? NaN : Number(value)
  return Number.isFinite(found) ? found : otherwise
}
