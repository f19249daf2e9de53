import { NO_HEIGHT, heightGrid, type HeightGrid } from '@/lib/terrain'
import { findBounds } from '@/lib/geo'

/** A grid over 0.01° each way at 43° north, with a height in metres for each sample; undefined for a gap. */
export function gridOf(rows: readonly (readonly (number | undefined)[])[], verticalDoubt_ft = 0): HeightGrid {
  const bounds = findBounds([{ lat: 43, lon: -72 }, { lat: 43.01, lon: -71.99 }])
  if (!bounds) throw new Error('no bounds')
  const columnCount = rows[0]?.length ?? 0
  const samples = Int16Array.from(rows.flat(), (height_m) => (height_m === undefined ? NO_HEIGHT : Math.round((height_m - 100) * 10)))
  return heightGrid({ bounds, rowCount: rows.length, columnCount, base_m: 100, samples, verticalDoubt_ft, doubtBasis: 'assumed' })
}

/** An SRTM tile of three arc-seconds whose height is told by row and column. */
export function hgtBytes(heightM: (row: number, column: number) => number): Uint8Array {
  const bytes = new Uint8Array(1201 * 1201 * 2), view = new DataView(bytes.buffer)
  for (let row = 0; row < 1201; row++) for (let column = 0; column < 1201; column++) view.setInt16(2 * (row * 1201 + column), heightM(row, column))
  return bytes
}
