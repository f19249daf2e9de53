import { issue, type Issue } from '../issue'
import { MOST_SAMPLES, NO_HEIGHT, doubtBases, type HeightGrid } from './height-grid'

const MAGIC = [0x4d, 0x52, 0x54, 0x48] // MRTH
/** Raised whenever the layout changes: heights are made again from their file. */
const HEIGHT_BLOB_VERSION = 1
/** Magic, version, length, checksum, then six numbers of 8 bytes, then rows, columns, basis and room. */
const HEADER_BYTES = 16
const FACTS_BYTES = 6 * 8 + 4 * 4
const LONGEST_CODE = 3

/**
 * A grid as one compact blob, the same bytes for the same grid.
 *
 * Each sample is kept as its difference from what the samples beside and above it foretell (left + above − corner),
 * in one byte where the ground is smooth and up to three where it is not; 0 stands for no height.
 */
export function encodeHeightGrid(grid: HeightGrid): Uint8Array<ArrayBuffer> {
  const { bounds, rowCount, columnCount, samples } = grid
  const blob = new Uint8Array(HEADER_BYTES + FACTS_BYTES + samples.length * LONGEST_CODE)
  const view = new DataView(blob.buffer)
  blob.set(MAGIC)
  view.setUint32(4, HEIGHT_BLOB_VERSION, true)
  const facts = [bounds.south, bounds.west, bounds.north, bounds.east, grid.base_m, grid.verticalDoubt_ft]
  facts.forEach((fact, i) => { view.setFloat64(HEADER_BYTES + 8 * i, fact, true) })
  const counts = [rowCount, columnCount, doubtBases.indexOf(grid.doubtBasis), 0]
  counts.forEach((count, i) => { view.setUint32(HEADER_BYTES + 48 + 4 * i, count, true) })
  const foretold = new Foretold(columnCount)
  let at = HEADER_BYTES + FACTS_BYTES
  for (const sample of samples) {
    let code = 0
    if (sample !== NO_HEIGHT) {
      const difference = sample - foretold.next()
      code = (difference < 0 ? -2 * difference - 1 : 2 * difference) + 1
    }
    foretold.take(sample)
    while (code >= 0x80) {
      blob[at++] = (code & 0x7f) | 0x80
      code >>>= 7
    }
    blob[at++] = code
  }
  const whole = blob.slice(0, at)
  const wholeView = new DataView(whole.buffer)
  wholeView.setUint32(8, at, true)
  wholeView.setUint32(12, checksumOf(whole), true)
  return whole
}

/**
 * @returns the grid, or `terrain-unreadable` with the reason: not-ours, newer-version, older-version, damaged. Every
 *   length is checked against what is there; nothing is trusted.
 */
export function decodeHeightGrid(blob: Uint8Array): HeightGrid | Issue {
  if (blob.length < HEADER_BYTES + FACTS_BYTES || MAGIC.some((byte, i) => blob[i] !== byte)) return refusal('not-ours')
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength)
  const version = view.getUint32(4, true)
  if (version !== HEIGHT_BLOB_VERSION) return refusal(version > HEIGHT_BLOB_VERSION ? 'newer-version' : 'older-version')
  if (view.getUint32(8, true) !== blob.length || view.getUint32(12, true) !== checksumOf(blob)) return refusal('damaged')
  const fact = (i: number) => view.getFloat64(HEADER_BYTES + 8 * i, true)
  const count = (i: number) => view.getUint32(HEADER_BYTES + 48 + 4 * i, true)
  const bounds = { south: fact(0), west: fact(1), north: fact(2), east: fact(3) }
  const base_m = fact(4), verticalDoubt_ft = fact(5), rowCount = count(0), columnCount = count(1)
  const doubtBasis = doubtBases[count(2)]
  const isWhole = doubtBasis !== undefined && Math.abs(base_m) < 1e5 && verticalDoubt_ft >= 0 && verticalDoubt_ft < 1e5 &&
    bounds.south >= -90 && bounds.south < bounds.north && bounds.north <= 90 && bounds.west >= -180 && bounds.west < bounds.east && bounds.east <= 180 &&
    rowCount >= 2 && columnCount >= 2 && rowCount * columnCount <= MOST_SAMPLES && rowCount * columnCount <= blob.length
  if (!isWhole) return refusal('damaged')
  const samples = new Int16Array(rowCount * columnCount)
  const foretold = new Foretold(columnCount)
  let at = HEADER_BYTES + FACTS_BYTES
  for (let i = 0; i < samples.length; i++) {
    let code = 0, shift = 0, byte = 0x80
    for (; byte >= 0x80; shift += 7) {
      if (at >= blob.length || shift >= 7 * LONGEST_CODE) return refusal('damaged')
      byte = blob[at++] ?? 0
      code |= (byte & 0x7f) << shift
    }
    let sample = NO_HEIGHT
    if (code > 0) {
      const zigzag = code - 1
      sample = foretold.next() + (zigzag & 1 ? -(zigzag + 1) / 2 : zigzag / 2)
      if (sample <= NO_HEIGHT || sample > 32767) return refusal('damaged')
    }
    samples[i] = sample
    foretold.take(sample)
  }
  if (at !== blob.length) return refusal('damaged')
  return { bounds, rowCount, columnCount, base_m, samples, verticalDoubt_ft, doubtBasis }
}

const refusal = (reason: string): Issue => issue('terrain-unreadable', 'block', [], { reason })

/** What the samples so far foretell of the next one; a missing sample counts as its nearest known neighbour. */
class Foretold {
  private readonly above: Int32Array
  private column = 0
  private left = 0
  private corner = 0
  private row = 0

  constructor(private readonly columnCount: number) {
    this.above = new Int32Array(columnCount)
  }

  next(): number {
    if (this.row === 0) return this.left
    if (this.column === 0) return this.above[0] ?? 0
    return Math.max(-32767, Math.min(32767, this.left + (this.above[this.column] ?? 0) - this.corner))
  }

  take(sample: number): void {
    const known = sample === NO_HEIGHT ? this.next() : sample
    this.corner = this.above[this.column] ?? 0
    this.above[this.column] = known
    this.left = known
    if (++this.column < this.columnCount) return
    this.column = 0
    this.row++
  }
}

/** FNV-1a over all bytes but the checksum's own: any change of one byte changes it. */
function checksumOf(bytes: Uint8Array): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < bytes.length; i++) {
    if (i >= 12 && i < 16) continue
    hash = Math.imul(hash ^ (bytes[i] ?? 0), 0x01000193)
  }
  return hash >>> 0
}
