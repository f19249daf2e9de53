import { issue, type Issue } from '../issue'
import { findRasterValue, type HeightSurface } from './surface'

const VOID = -32768
const NAME = /^([NS])(\d{2})([EW])(\d{3})/i
/** Samples along a side: 3 and 1 arc-seconds, both ends counted. */
const SIDES = [1201, 3601]

/** True for a file named as tiles of one degree are: its south-west corner. */
export const isHgtName = (fileName: string): boolean => /\.hgt(?:\.gz)?$/i.test(fileName)

/**
 * Reads an SRTM tile: one degree square, 16-bit whole metres, most significant byte first, rows from the north.
 *
 * @param bytes    the whole file, unpacked
 * @param fileName tells the south-west corner: N49E011.hgt
 * @returns its surface, or a blocking issue: `elevation-hgt-name`, `elevation-hgt-size`
 * @source SRTM documentation (NASA/JPL): file name, byte order, 1201 or 3601 samples a side, voids −32768; from memory
 */
export function readHgt(bytes: Uint8Array, fileName: string): HeightSurface | Issue {
  const plainName = fileName.split(/[\\/]/).pop() ?? fileName
  const [, northSouth = '', latText = '', eastWest = '', lonText = ''] = NAME.exec(plainName) ?? []
  const south = Number(latText) * (northSouth.toUpperCase() === 'S' ? -1 : 1)
  const west = Number(lonText) * (eastWest.toUpperCase() === 'W' ? -1 : 1)
  if (latText === '' || south < -90 || south > 89 || west < -180 || west > 179) return issue('elevation-hgt-name', 'block', [], { file: plainName })
  const side = SIDES.find((one) => one * one * 2 === bytes.length)
  if (side === undefined) return issue('elevation-hgt-size', 'block', [], { file: plainName, byteCount: bytes.length })
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const heights_m = new Float32Array(side * side)
  for (let i = 0; i < heights_m.length; i++) {
    const height_m = view.getInt16(2 * i)
    heights_m[i] = height_m === VOID ? NaN : height_m
  }
  const step_deg = 1 / (side - 1)
  return {
    bounds: { south, west, north: south + 1, east: west + 1 }, step_deg,
    lattice: { lat: south, lon: west, latStep_deg: step_deg, lonStep_deg: step_deg },
    // A tile carries its neighbour's first line itself: nothing beyond its edge is its own.
    findHeightM: (lat, lon) => lat < south || lat > south + 1 || lon < west || lon > west + 1
      ? undefined : findRasterValue(heights_m, side, side, (south + 1 - lat) / step_deg, (lon - west) / step_deg),
  }
}
