import { demoBounds, spotFromPoint } from './frame'
import type { HeightField } from './land/height-field'
import type { WaterArea } from './land/water-areas'
import { isInRing } from './geometry/polygon'

/** A sample every 1.2 arc-seconds: about 37 m north and 27 m east. */
const STEP_DEG = 1 / 3000
const HEADER_BYTES = 8

/** TIFF field types. */
const ASCII = 2, SHORT = 3, LONG = 4, DOUBLE = 12
type Entry = { tag: number; type: number; values: readonly number[] }

const BYTES: Readonly<Record<number, number>> = { [ASCII]: 1, [SHORT]: 2, [LONG]: 4, [DOUBLE]: 8 }

/**
 * Ground as a GeoTIFF: one band of 32-bit floats in metres, WGS 84 degrees, north up, one strip, not packed.
 * Still water is level, as in surveyed elevation.
 *
 * @source TIFF 6.0 (field types, tags); OGC GeoTIFF 1.1 (ModelPixelScale, ModelTiepoint, GeoKeyDirectory: geographic,
 *   pixel is area, EPSG 4326, heights in metres: VerticalUnitsGeoKey 9001); from memory
 */
export function elevationTiff(field: HeightField, water: readonly WaterArea[]): Uint8Array<ArrayBuffer> {
  const { south, west, north, east } = demoBounds()
  const columns = Math.ceil((east - west) / STEP_DEG)
  const rows = Math.ceil((north - south) / STEP_DEG)
  const still = water.filter(({ kind }) => kind !== 'river')
  const heights = new Float32Array(columns * rows)
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const spot = spotFromPoint({ lat: north - (row + 0.5) * STEP_DEG, lon: west + (column + 0.5) * STEP_DEG })
      const pool = still.find(({ outer }) => isInRing(outer, spot))
      // Whole decimetres: more would claim what no survey knows.
      heights[row * columns + column] = Math.round((pool?.surface_m ?? field.at(spot)) * 10) / 10
    }
  const citation = [...'WGS 84|'].map((letter) => letter.charCodeAt(0))
  const note = [...'Invented terrain of the Millrace demo district\0'].map((letter) => letter.charCodeAt(0))
  const entries: Entry[] = [
    { tag: 256, type: LONG, values: [columns] }, { tag: 257, type: LONG, values: [rows] },
    { tag: 258, type: SHORT, values: [32] }, { tag: 259, type: SHORT, values: [1] }, { tag: 262, type: SHORT, values: [1] },
    { tag: 270, type: ASCII, values: note },
    { tag: 273, type: LONG, values: [0] }, { tag: 277, type: SHORT, values: [1] }, { tag: 278, type: LONG, values: [rows] },
    { tag: 279, type: LONG, values: [heights.byteLength] }, { tag: 339, type: SHORT, values: [3] },
    { tag: 33550, type: DOUBLE, values: [STEP_DEG, STEP_DEG, 0] },
    { tag: 33922, type: DOUBLE, values: [0, 0, 0, west, north, 0] },
    { tag: 34735, type: SHORT, values: [1, 1, 0, 5, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326, 2049, 34737, citation.length, 0, 4099, 0, 1, 9001] },
    { tag: 34737, type: ASCII, values: [...citation, 0] },
  ]
  return assembled(entries, heights)
}

function assembled(entries: readonly Entry[], heights: Float32Array): Uint8Array<ArrayBuffer> {
  const directoryBytes = 2 + entries.length * 12 + 4
  let free = HEADER_BYTES + directoryBytes
  const places = entries.map(({ type, values }) => {
    const size = BYTES[type]! * values.length
    if (size <= 4) return undefined
    const at = free
    free += size + (size % 2)
    return at
  })
  const dataAt = Math.ceil(free / 4) * 4
  const bytes = new Uint8Array(dataAt + heights.byteLength)
  const view = new DataView(bytes.buffer)
  view.setUint16(0, 0x4949)
  view.setUint16(2, 42, true)
  view.setUint32(4, HEADER_BYTES, true)
  view.setUint16(HEADER_BYTES, entries.length, true)
  entries.forEach(({ tag, type, values }, i) => {
    const entry = HEADER_BYTES + 2 + i * 12
    view.setUint16(entry, tag, true)
    view.setUint16(entry + 2, type, true)
    view.setUint32(entry + 4, values.length, true)
    const outside = places[i]
    if (outside !== undefined) view.setUint32(entry + 8, outside, true)
    const put = outside ?? entry + 8
    const given = tag === 273 ? [dataAt] : values
    given.forEach((value, k) => {
      if (type === ASCII) view.setUint8(put + k, value)
      else if (type === SHORT) view.setUint16(put + 2 * k, value, true)
      else if (type === LONG) view.setUint32(put + 4 * k, value, true)
      else view.setFloat64(put + 8 * k, value, true)
    })
  })
  heights.forEach((height, i) => view.setFloat32(dataAt + 4 * i, height, true))
  return bytes
}
