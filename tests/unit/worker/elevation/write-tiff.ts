/** TIFF field types by the bytes they take. */
const ASCII = 2, SHORT = 3, LONG = 4, DOUBLE = 12
const bytesOf: Readonly<Record<number, number>> = { [ASCII]: 1, [SHORT]: 2, [LONG]: 4, [DOUBLE]: 8 }

export type TiffAsk = {
  columns: number
  rows: number
  value: (row: number, column: number) => number
  kind?: 'f32' | 'i16' | 'u8' | 'f64'
  /** Side of a tile, a multiple of 16; else strips of one row. */
  tile?: number
  photometric?: number
  bands?: number
  scale?: readonly [number, number]
  tie?: readonly number[]
  matrix?: readonly number[]
  /** Pairs of key and value, GeoTIFF 1.1. */
  keys?: readonly (readonly [number, number])[]
  noData?: string
  metadata?: string
}

const kinds = { f32: { bits: 32, format: 3 }, f64: { bits: 64, format: 3 }, i16: { bits: 16, format: 2 }, u8: { bits: 8, format: 1 } } as const

/** A small little-endian TIFF, unpacked, written by the letter of TIFF 6.0 and GeoTIFF 1.1. */
export function tiffBytes({ columns, rows, value, kind = 'f32', tile, photometric = 1, bands = 1, scale, tie, matrix, keys, noData, metadata }: TiffAsk): Uint8Array<ArrayBuffer> {
  const { bits, format } = kinds[kind], size = bits / 8
  const pieces = tile ? Math.ceil(columns / tile) * Math.ceil(rows / tile) : rows
  const pieceBytes = (tile ? tile * tile : columns) * size * bands
  const entries: [number, number, readonly number[]][] = [
    [256, LONG, [columns]], [257, LONG, [rows]], [258, SHORT, Array<number>(bands).fill(bits)], [259, SHORT, [1]], [262, SHORT, [photometric]],
    [277, SHORT, [bands]], [339, SHORT, Array<number>(bands).fill(format)],
  ]
  if (photometric === 3) entries.push([320, SHORT, Array<number>(3 * 2 ** bits).fill(0)])
  const offsets = Array<number>(pieces).fill(0)
  if (tile) entries.push([322, LONG, [tile]], [323, LONG, [tile]], [324, LONG, offsets], [325, LONG, Array<number>(pieces).fill(pieceBytes)])
  else entries.push([273, LONG, offsets], [278, LONG, [1]], [279, LONG, Array<number>(pieces).fill(pieceBytes)])
  if (scale) entries.push([33550, DOUBLE, [...scale, 0]])
  if (tie) entries.push([33922, DOUBLE, tie])
  if (matrix) entries.push([34264, DOUBLE, matrix])
  if (keys) entries.push([34735, SHORT, [1, 1, 0, keys.length, ...[...keys].sort(([a], [b]) => a - b).flatMap(([key, of]) => [key, 0, 1, of])]])
  const ascii = (text: string) => [...text, '\0'].map((letter) => letter.charCodeAt(0))
  if (metadata) entries.push([42112, ASCII, ascii(metadata)])
  if (noData) entries.push([42113, ASCII, ascii(noData)])
  entries.sort(([a], [b]) => a - b)

  let free = 8 + 2 + entries.length * 12 + 4
  const places = entries.map(([, type, values]) => {
    const length = bytesOf[type]! * values.length
    if (length <= 4) return undefined
    const at = free
    free += length + (length % 2)
    return at
  })
  const dataAt = Math.ceil(free / 8) * 8
  for (let i = 0; i < pieces; i++) offsets[i] = dataAt + i * pieceBytes
  const bytes = new Uint8Array(dataAt + pieces * pieceBytes), view = new DataView(bytes.buffer)
  view.setUint16(0, 0x4949)
  view.setUint16(2, 42, true)
  view.setUint32(4, 8, true)
  view.setUint16(8, entries.length, true)
  entries.forEach(([tag, type, values], i) => {
    const entry = 10 + i * 12
    view.setUint16(entry, tag, true)
    view.setUint16(entry + 2, type, true)
    view.setUint32(entry + 4, values.length, true)
    const outside = places[i]
    if (outside !== undefined) view.setUint32(entry + 8, outside, true)
    values.forEach((one, k) => {
      const at = (outside ?? entry + 8) + k * bytesOf[type]!
      if (type === ASCII) view.setUint8(at, one)
      else if (type === SHORT) view.setUint16(at, one, true)
      else if (type === LONG) view.setUint32(at, one, true)
      else view.setFloat64(at, one, true)
    })
  })
  const put = (at: number, one: number) => {
    if (kind === 'f32') view.setFloat32(at, one, true)
    else if (kind === 'f64') view.setFloat64(at, one, true)
    else if (kind === 'i16') view.setInt16(at, one, true)
    else view.setUint8(at, one)
  }
  for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) for (let band = 0; band < bands; band++) {
    const piece = tile ? Math.floor(row / tile) * Math.ceil(columns / tile) + Math.floor(column / tile) : row
    const within = tile ? (row % tile) * tile + (column % tile) : column
    put(dataAt + piece * pieceBytes + (within * bands + band) * size, value(row, column))
  }
  return bytes
}
