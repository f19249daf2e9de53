import { expect, test } from 'vitest'
import { MOST_SAMPLES, findHeight, makeGrid, readHgt, type HeightSurface, type MadeGrid } from '@/lib/terrain'
import type { Bounds } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { feetFromMetres } from '@/lib/units'
import { hgtBytes } from './grids'

function made(surfaces: readonly HeightSurface[], bounds: Bounds): MadeGrid | Issue {
  const work = makeGrid(surfaces, { bounds, verticalDoubt_ft: 52.5, doubtBasis: 'published' })
  for (;;) {
    const turn = work.next()
    if (turn.done) return turn.value
  }
}

function surfaceOf(read: HeightSurface | Issue): HeightSurface {
  if ('code' in read) throw new Error(read.code)
  return read
}

function gridFrom(found: MadeGrid | Issue): MadeGrid {
  if ('code' in found) throw new Error(found.code)
  return found
}

test('a tile is placed by its name, rows from the north, most significant byte first', () => {
  const surface = surfaceOf(readHgt(hgtBytes((row, column) => row + 2 * column), 'N49E011.hgt'))
  expect(surface.bounds).toEqual({ south: 49, west: 11, north: 50, east: 12 })
  expect(surface.findHeightM(50, 11)).toBe(0)
  expect(surface.findHeightM(49, 11)).toBe(1200)
  expect(surface.findHeightM(50, 12)).toBe(2400)
  expect(surface.findHeightM(49.5, 11.5)).toBeCloseTo(600 + 1200, 6)
})

test('tiles south and west of the origin are placed by their south-west corner', () => {
  const surface = surfaceOf(readHgt(hgtBytes(() => 5), 'folder/s34w071.HGT'))
  expect(surface.bounds).toEqual({ south: -34, west: -71, north: -33, east: -70 })
})

test('a tile without a place in its name, or of another length, is refused', () => {
  expect(readHgt(hgtBytes(() => 5), 'tile.hgt')).toMatchObject({ code: 'elevation-hgt-name', values: { file: 'tile.hgt' } })
  expect(readHgt(new Uint8Array(1000), 'N49E011.hgt')).toMatchObject({ code: 'elevation-hgt-size', values: { byteCount: 1000 } })
})

test('the samples of a tile are kept as they are, and a void stays a gap', () => {
  const surface = surfaceOf(readHgt(hgtBytes((row, column) => (row === 600 && column === 600 ? -32768 : 300 + row - column)), 'N49E011.hgt'))
  const { grid } = gridFrom(made([surface], { south: 49.48, west: 11.48, north: 49.52, east: 11.52 }))
  expect(findHeight(grid, { lat: 49.5, lon: 11.5 })).toBeUndefined()
  expect(findHeight(grid, { lat: 50 - 610 / 1200, lon: 11 + 590 / 1200 })?.height_ft).toBeCloseTo(feetFromMetres(300 + 610 - 590), 6)
})

test('two tiles that meet give one grid without a gap at their seam', () => {
  const south = surfaceOf(readHgt(hgtBytes((row) => 500 - row / 10), 'N49E011.hgt'))
  const north = surfaceOf(readHgt(hgtBytes((row) => 500 + (1200 - row) / 10), 'N50E011.hgt'))
  const { grid, coveredShare, issues } = gridFrom(made([south, north], { south: 49.97, west: 11.4, north: 50.03, east: 11.5 }))
  expect(coveredShare).toBe(1)
  expect(issues).toEqual([])
  expect(findHeight(grid, { lat: 50, lon: 11.45 })?.height_ft).toBeCloseTo(feetFromMetres(500), 5)
  expect(findHeight(grid, { lat: 50 + 20 / 1200, lon: 11.45 })?.height_ft).toBeCloseTo(feetFromMetres(502), 5)
})

test('a file elsewhere is told with both places, and one that covers half says how much', () => {
  const surface = surfaceOf(readHgt(hgtBytes(() => 5), 'N49E011.hgt'))
  expect(made([surface], { south: 45.4, west: -122.7, north: 45.5, east: -122.6 })).toMatchObject({ code: 'elevation-outside', values: { fileSouth: '49.000', south: '45.400' } })
  const half = gridFrom(made([surface], { south: 49.5, west: 11.95, north: 49.6, east: 12.05 }))
  expect(half.coveredShare).toBeCloseTo(0.5, 1)
  expect(half.issues).toMatchObject([{ code: 'elevation-partial', severity: 'warn' }])
})

test('numbers that cannot be heights are refused', () => {
  const surface = surfaceOf(readHgt(hgtBytes(() => 20_000), 'N49E011.hgt'))
  expect(made([surface], { south: 49.4, west: 11.4, north: 49.5, east: 11.5 })).toMatchObject({ code: 'elevation-not-heights', values: { reason: 'range' } })
})

test('a wide district gets a coarser grid, never one beyond the memory set for it', () => {
  const surface: HeightSurface = { bounds: { south: 40, west: -75, north: 42, east: -72 }, step_deg: 1e-5, findHeightM: (lat) => 100 * (lat - 40) }
  const { grid } = gridFrom(made([surface], { south: 40.5, west: -74, north: 41.5, east: -73 }))
  expect(grid.samples.length).toBeLessThanOrEqual(MOST_SAMPLES)
  expect(findHeight(grid, { lat: 41, lon: -73.5 })?.height_ft).toBeCloseTo(feetFromMetres(100), 0)
})
