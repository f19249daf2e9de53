import { gzipSync } from 'node:zlib'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { gunzip } from '@/app/_worker/decompress'
import { importElevation, type ElevationImport } from '@/app/_worker/elevation/import-elevation'
import { findProjection } from '@/app/_worker/elevation/raster-projection'
import type { Issue } from '@/lib/issue'
import { decodeHeightGrid, findHeight, type HeightGrid } from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'
import { hgtBytes } from '../../terrain/grids'
import { tiffBytes, type TiffAsk } from './write-tiff'
import { zipBytes } from './write-zip'

const bounds = { south: 43, west: -72, north: 43.02, east: -71.97 }
const DEGREES = [[1024, 2], [1025, 1], [2048, 4326]] as const
/** 80 × 80 samples of a slope over the district: 0.001° apart, 1 m a row southwards, 2 m a column eastwards. */
const slope: TiffAsk = { columns: 80, rows: 80, value: (row, column) => 100 + row + 2 * column, scale: [0.001, 0.001], tie: [0, 0, 0, -72.02, 43.05, 0], keys: [...DEGREES, [4099, 9001]] }

const file = (bytes: Uint8Array, name = 'ground.tif') => ({ name, blob: new Blob([new Uint8Array(bytes)]) })
const run = (bytes: Uint8Array, name?: string) => importElevation([file(bytes, name)], { bounds, gunzip })

function whole(found: ElevationImport | Issue): ElevationImport & { grid: HeightGrid } {
  if ('code' in found) throw new Error(JSON.stringify(found))
  const grid = decodeHeightGrid(found.terrainBlob)
  if ('code' in grid) throw new Error(grid.code)
  return { ...found, grid }
}

/** Height that the slope has at a place, worked out beside the program: samples stand for areas. */
const slopeM = (lat: number, lon: number) => 100 + ((43.05 - lat) / 0.001 - 0.5) + 2 * ((lon + 72.02) / 0.001 - 0.5)
const heightM = (grid: HeightGrid, lat: number, lon: number) => (findHeight(grid, { lat, lon })?.height_ft ?? NaN) * 0.3048

describe('a GeoTIFF of heights', () => {
  test.each(['f32', 'f64', 'i16'] as const)('in %s, striped or tiled, gives the heights it holds', async (kind) => {
    for (const tile of [undefined, 32]) {
      const { grid, issues, summary } = whole(await run(tiffBytes({ ...slope, kind, tile })))
      expect(issues).toEqual([])
      expect(summary.coveredShare).toBe(1)
      expect(heightM(grid, 43.0107, -71.9853)).toBeCloseTo(slopeM(43.0107, -71.9853), 4)
    }
  })

  test('whose samples stand for points lies half a step north and west of one whose samples stand for areas', async () => {
    const { grid } = whole(await run(tiffBytes({ ...slope, keys: [[1024, 2], [1025, 2], [2048, 4326], [4099, 9001]] })))
    expect(heightM(grid, 43.01, -71.985)).toBeCloseTo(100 + 40 + 2 * 35, 4)
  })

  test('placed by a transformation instead of a tie point lies at the same place', async () => {
    const matrix = [0.001, 0, 0, -72.02, 0, -0.001, 0, 43.05, 0, 0, 1, 0, 0, 0, 0, 1]
    const { grid } = whole(await run(tiffBytes({ ...slope, scale: undefined, tie: undefined, matrix })))
    expect(heightM(grid, 43.01, -71.98)).toBeCloseTo(slopeM(43.01, -71.98), 4)
  })

  test('tied at another sample than its first lies at the same place', async () => {
    const { grid } = whole(await run(tiffBytes({ ...slope, tie: [10, 20, 0, -72.01, 43.03, 0] })))
    expect(heightM(grid, 43.01, -71.98)).toBeCloseTo(slopeM(43.01, -71.98), 4)
  })

  test.each([
    ['US survey feet by its vertical unit', { keys: [...DEGREES, [4099, 9003]] }, 1200 / 3937],
    ['feet by its vertical unit', { keys: [...DEGREES, [4099, 9002]] }, 0.3048],
    ['feet by its vertical system', { keys: [...DEGREES, [4096, 8228]] }, 0.3048],
    ['feet by the word of its band', { keys: DEGREES, metadata: '<GDALMetadata><Item name="UNITTYPE" sample="0" role="unittype">ft</Item></GDALMetadata>' }, 0.3048],
    ['a scale of its own', { keys: [...DEGREES, [4099, 9001]], metadata: '<GDALMetadata><Item name="SCALE" sample="0" role="scale">0.1</Item><Item name="OFFSET" sample="0" role="offset">50</Item></GDALMetadata>' }, 0.1, 50],
  ] as const)('in %s is read in its unit', async (_name, more, factor, offset_m?: number) => {
    const { grid, issues } = whole(await run(tiffBytes({ ...slope, ...more })))
    expect(issues).toEqual([])
    // The grid keeps tenths of a metre.
    expect(Math.abs(heightM(grid, 43.01, -71.98) - (slopeM(43.01, -71.98) * factor + (offset_m ?? 0)))).toBeLessThan(0.06)
  })

  test('that does not name its unit is taken for metres and says so', async () => {
    const { issues } = whole(await run(tiffBytes({ ...slope, keys: DEGREES })))
    expect(issues).toMatchObject([{ code: 'elevation-unit-assumed', severity: 'warn', values: { unit: 'm' } }])
  })

  test('has a gap where its no-data value stands, and where nothing is a number', async () => {
    const value = (row: number, column: number) => (column === 35 ? -3.4028234663852886e38 : column === 45 ? NaN : 100)
    const { grid, summary } = whole(await run(tiffBytes({ ...slope, value, noData: '-3.4028234663852886e+38' })))
    expect(findHeight(grid, { lat: 43.01, lon: -72.02 + 0.0355 })).toBeUndefined()
    expect(findHeight(grid, { lat: 43.01, lon: -72.02 + 0.0455 })).toBeUndefined()
    expect(heightM(grid, 43.01, -72.02 + 0.0405)).toBeCloseTo(100, 4)
    expect(summary.coveredShare).toBeLessThan(1)
  })

  test('finer than a grid holds is averaged by squares, so a slope stays where it is', async () => {
    const columns = 60, rows = 60, step = 0.00001
    const fine = { ...slope, columns, rows, scale: [step, step] as const, tie: [0, 0, 0, -71.99, 43.01, 0], value: (row: number) => 100 + row }
    const found = whole(await importElevation([file(tiffBytes(fine))], { bounds: { south: 43.0095, west: -71.9899, north: 43.0099, east: -71.9895 }, gunzip }))
    expect(heightM(found.grid, 43.0097, -71.9897)).toBeCloseTo(100 + 30 - 0.5, 0)
  })
})

describe('projected files', () => {
  // CN Tower, 43°38′33.24″ N 79°23′13.7″ W: UTM zone 17, 630,084 m east, 4,833,438 m north (general encyclopedia, from memory).
  test('a UTM place is found where it is published to be', () => {
    const projection = findProjection({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 32617 })
    if ('code' in projection) throw new Error(projection.code)
    const [x, y] = projection.toFile(43 + 38 / 60 + 33.24 / 3600, -(79 + 23 / 60 + 13.7 / 3600))
    expect(Math.abs(x - 630_084)).toBeLessThan(1)
    expect(Math.abs(y - 4_833_438)).toBeLessThan(1)
  })

  // IOGP Guidance Note 7-2, method 1024: 24°22′54.433″ N 100°20′00″ W is −11,169,055.58 m, 2,800,000.00 m (from memory).
  test('a place in web mercator is found where it is published to be', () => {
    const projection = findProjection({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 3857 })
    if ('code' in projection) throw new Error(projection.code)
    const [x, y] = projection.toFile(24 + 22 / 60 + 54.433 / 3600, -(100 + 20 / 60))
    expect(Math.abs(x + 11_169_055.58)).toBeLessThan(0.02)
    expect(Math.abs(y - 2_800_000)).toBeLessThan(0.02)
  })

  test.each([[32618], [26918], [6347], [3857]])('EPSG:%i gives heights at the places it projects', async (code) => {
    const projection = findProjection({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: code })
    if ('code' in projection) throw new Error(projection.code)
    const [west, north] = projection.toFile(43.04, -72.03)
    const tiff = tiffBytes({ ...slope, columns: 120, rows: 160, scale: [60, 60], tie: [0, 0, 0, west, north, 0], keys: [[1024, 1], [3072, code], [4099, 9001]] })
    const { grid } = whole(await run(tiff))
    const [x, y] = projection.toFile(43.01, -71.98)
    expect(Math.abs(heightM(grid, 43.01, -71.98) - (100 + (north - y) / 60 - 0.5 + 2 * ((x - west) / 60 - 0.5)))).toBeLessThan(0.06)
  })

  test('the southern half of a UTM zone counts from ten million metres', () => {
    const south = findProjection({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 32718 })
    if ('code' in south) throw new Error(south.code)
    expect(south.toFile(0, -75)[1]).toBeCloseTo(10_000_000, 3)
  })
})

describe('files that are no elevation of this district are refused in one issue', () => {
  test.each([
    ['a colour picture', { photometric: 2, bands: 3, kind: 'u8' }, { code: 'elevation-not-heights', values: { reason: 'colour' } }],
    ['a palette', { photometric: 3, kind: 'u8' }, { code: 'elevation-not-heights', values: { reason: 'palette' } }],
    ['several bands', { bands: 2 }, { code: 'elevation-not-heights', values: { reason: 'bands' } }],
    ['a grey picture', { kind: 'u8', value: (): number => 9 }, { code: 'elevation-not-heights', values: { reason: 'bits' } }],
    ['no place on the earth', { keys: undefined, scale: undefined, tie: undefined }, { code: 'elevation-no-place' }],
    ['pixels but no system', { keys: undefined }, { code: 'elevation-no-place' }],
    ['a system not supported', { keys: [[1024, 1], [3072, 2263]] }, { code: 'elevation-projection', values: { projection: 'EPSG:2263' } }],
    ['degrees of an old datum', { keys: [[1024, 2], [2048, 4267]] }, { code: 'elevation-projection', values: { projection: 'EPSG:4267' } }],
    ['a turned raster', { scale: undefined, tie: undefined, matrix: [0.001, 0.0005, 0, -72, 0.0005, -0.001, 0, 43, 0, 0, 1, 0, 0, 0, 0, 1] }, { code: 'elevation-rotated' }],
    ['a place elsewhere', { tie: [0, 0, 0, 11, 50, 0] }, { code: 'elevation-outside', values: { fileNorth: '50.000', south: '43.000' } }],
    ['numbers beyond all heights', { value: (): number => 40_000 }, { code: 'elevation-not-heights', values: { reason: 'range' } }],
  ] as const)('%s', async (_name, more, expected) => {
    expect(await run(tiffBytes({ ...slope, ...more } as TiffAsk))).toMatchObject({ severity: 'block', ...expected })
  })

  test('a file cut short, at every length', async () => {
    const bytes = tiffBytes({ ...slope, columns: 20, rows: 20 })
    for (let length = 4; length < bytes.length; length += 97) expect(await run(bytes.slice(0, length))).toMatchObject({ severity: 'block', code: expect.stringMatching(/^elevation-(truncated|damaged|not-elevation)$/) })
  })

  test('other kinds of file are named', async () => {
    expect(await run(new TextEncoder().encode('ncols 4'), 'grid.asc')).toMatchObject({ code: 'elevation-not-elevation', values: { found: 'other' } })
    expect(await run(new Uint8Array(0), 'nothing.tif')).toMatchObject({ code: 'elevation-not-elevation', values: { found: 'empty' } })
    expect(await importElevation([], { bounds, gunzip })).toMatchObject({ code: 'elevation-no-file' })
  })
})

test('SRTM tiles are read plain or packed, and several make one', async () => {
  const tile = hgtBytes((row) => 300 + row / 100)
  const plain = whole(await run(tile, 'N43W072.hgt')), packed = whole(await run(gzipSync(tile), 'N43W072.hgt.gz'))
  expect(packed.terrainBlob).toEqual(plain.terrainBlob)
  expect(plain.summary).toMatchObject({ doubtBasis: 'published', verticalDoubt_ft: 52.5, fileNames: ['N43W072.hgt'] })
  const both = whole(await importElevation([file(tile, 'N43W073.hgt'), file(tile, 'N43W072.hgt')], { bounds: { ...bounds, west: -72.02 }, gunzip }))
  expect(both.summary.coveredShare).toBe(1)
})

describe('a .zip', () => {
  test('with a tile or a GeoTIFF in it gives what the bare file gives, whatever else is in it', async () => {
    const tile = hgtBytes((row) => 300 + row / 100), tiff = tiffBytes(slope)
    const bare = whole(await run(tile, 'N43W072.hgt'))
    const packed = whole(await run(zipBytes({ 'srtm/readme.txt': new Uint8Array([65]), '__MACOSX/srtm/._N43W072.hgt': new Uint8Array(9), 'srtm/N43W072.hgt': tile }), 'N43W072.hgt.zip'))
    expect(packed.terrainBlob).toEqual(bare.terrainBlob)
    expect(packed.summary).toMatchObject({ doubtBasis: 'published', fileNames: ['N43W072.hgt.zip'] })
    expect(whole(await run(zipBytes({ 'ground.tif': tiff }), 'ground.zip')).terrainBlob).toEqual(whole(await run(tiff)).terrainBlob)
  })

  test('with two tiles in it makes one ground of them', async () => {
    const tile = hgtBytes((row) => 300 + row / 100)
    const both = whole(await importElevation([file(zipBytes({ 'N43W073.hgt': tile, 'N43W072.hgt': tile }), 'both.zip')], { bounds: { ...bounds, west: -72.02 }, gunzip }))
    expect(both.summary.coveredShare).toBe(1)
  })

  test('without elevation in it, or damaged, is refused in one issue', async () => {
    expect(await run(zipBytes({ 'photo.jpg': new Uint8Array(40) }), 'photos.zip')).toMatchObject({ severity: 'block', code: 'elevation-zip-without', values: { file: 'photos.zip' } })
    expect(await run(new Uint8Array([0x50, 0x4b, 3, 4]), 'tile.zip')).toMatchObject({ severity: 'block', code: 'elevation-damaged', values: { file: 'tile.zip', reason: 'zip' } })
    const cut = zipBytes({ 'N43W072.hgt': hgtBytes(() => 300) })
    for (let length = 4; length < cut.length; length += 499) expect(await run(cut.slice(0, length), 'cut.zip')).toMatchObject({ severity: 'block', code: expect.stringMatching(/^elevation-(damaged|zip-without)$/) })
  })
})

test('progress rises to the whole', async () => {
  const steps: number[] = []
  await importElevation([file(tiffBytes(slope))], { bounds, gunzip, onProgress: (doneShare) => void steps.push(doneShare) })
  expect(steps.at(-1)).toBe(1)
  expect(steps).toEqual([...steps].sort((a, b) => a - b))
})

test('the demo district has the ground its elevation file was made with', async () => {
  const bytes = readFileSync('public/demo/ostrel-valley-elevation.tif')
  const found = whole(await importElevation([file(bytes)], { bounds: { south: 43.03, west: -41.57, north: 43.09, east: -41.45 }, gunzip }))
  expect(found.summary.coveredShare).toBe(1)
  // Read from the file by hand: 32-bit floats after the directory, one strip, samples 1/3000° apart.
  const view = new DataView(bytes.buffer, bytes.byteOffset), directory = view.getUint32(4, true), count = view.getUint16(directory, true)
  const entry = (tag: number) => Array.from({ length: count }, (_, i) => directory + 2 + 12 * i).find((at) => view.getUint16(at, true) === tag) ?? 0
  const columns = view.getUint32(entry(256) + 8, true), dataAt = view.getUint32(entry(273) + 8, true), tie = view.getUint32(entry(33922) + 8, true)
  const west = view.getFloat64(tie + 24, true), north = view.getFloat64(tie + 32, true)
  for (const [row, column] of [[30, 50], [120, 200], [60, 130]] as const) {
    const place = { lat: north - (row + 0.5) / 3000, lon: west + (column + 0.5) / 3000 }
    expect(findHeight(found.grid, place)?.height_ft).toBeCloseTo(feetFromMetres(view.getFloat32(dataAt + 4 * (row * columns + column), true)), 3)
  }
})
