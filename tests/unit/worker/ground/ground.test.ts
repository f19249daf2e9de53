import { describe, expect, test } from 'vitest'
import { contourLines } from '@/app/_worker/ground/contour-lines'
import { groundService } from '@/app/_worker/ground/ground-service'
import { shadePicture } from '@/app/_worker/ground/shade-picture'
import { encodeHeightGrid } from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'
import { gridOf } from '../../terrain/grids'

const SIZE = 41
const middle = (SIZE - 1) / 2
/** A round hill, 100 m at the foot and 200 m at its top. */
const hill = (gapAt?: number) => gridOf(Array.from({ length: SIZE }, (_, row) => Array.from({ length: SIZE }, (__, column) =>
  row === gapAt && column === middle ? undefined : 100 + Math.max(0, 100 - 5 * Math.hypot(row - middle, column - middle)))))

describe('shade', () => {
  test('lies dark to the south-east of a hill, light to the north-west, and not at all on level ground', () => {
    const { width, pixels } = shadePicture(hill())
    const pixel = (row: number, column: number) => [...pixels.slice((row * width + column) * 4, (row * width + column) * 4 + 4)]
    expect(pixel(middle + 6, middle + 6).slice(0, 3)).toEqual([0, 0, 0])
    expect(pixel(middle + 6, middle + 6)[3]).toBeGreaterThan(60)
    expect(pixel(middle - 6, middle - 6).slice(0, 3)).toEqual([255, 255, 255])
    expect(pixel(middle - 6, middle - 6)[3]).toBeGreaterThan(60)
    expect(pixel(0, 0)[3]).toBe(0)
  })

  test('reaches half a sample beyond the outermost samples, which stand in the middle of their pixels', () => {
    const grid = hill()
    const { bounds } = shadePicture(grid)
    const step = (grid.bounds.north - grid.bounds.south) / (SIZE - 1)
    expect(bounds.north - grid.bounds.north).toBeCloseTo(step / 2, 12)
    expect(grid.bounds.south - bounds.south).toBeCloseTo(step / 2, 12)
  })
})

describe('lines of equal height', () => {
  test('of a round hill are circles where the hill has that height', () => {
    const grid = hill()
    const { interval, lines } = contourLines(grid, 'm')
    expect(interval).toBe(10)
    const step = (grid.bounds.north - grid.bounds.south) / (SIZE - 1), columnStep = (grid.bounds.east - grid.bounds.west) / (SIZE - 1)
    for (const { value, places } of lines.filter((line) => line.value > 100)) {
      for (const [lon, lat] of places) {
        const away = Math.hypot((grid.bounds.north - lat) / step - middle, (lon - grid.bounds.west) / columnStep - middle)
        expect(Math.abs(away - (200 - value) / 5)).toBeLessThan(0.5)
      }
    }
    expect(new Set(lines.map(({ value }) => value))).toEqual(new Set([110, 120, 130, 140, 150, 160, 170, 180, 190]))
  })

  test('stand at round feet when asked in feet', () => {
    const { interval, lines } = contourLines(hill(), 'ft')
    expect(interval).toBe(50)
    for (const { value } of lines) expect(value % 50).toBe(0)
    expect(Math.min(...lines.map(({ value }) => value))).toBeGreaterThan(feetFromMetres(100))
  })

  test('never run along the edge of the data, where it ends inside the grid', () => {
    const slope = gridOf(Array.from({ length: SIZE }, (_, row) => Array.from({ length: SIZE }, (__, column) => (row < 5 ? undefined : 100 + 3 * column))))
    const top = slope.bounds.north - 6 * ((slope.bounds.north - slope.bounds.south) / (SIZE - 1))
    const { lines } = contourLines(slope, 'm')
    expect(lines.length).toBeGreaterThan(3)
    for (const { places } of lines) for (const [, lat] of places) expect(lat).toBeLessThanOrEqual(top + 1e-9)
  })

  test('break where the data has a gap, and are none on level ground', () => {
    const whole = contourLines(hill(), 'm').lines.find(({ value }) => value === 150)!
    const broken = contourLines(hill(middle - 10), 'm').lines.find(({ value }) => value === 150)!
    expect(whole.places[0]).toEqual(whole.places[whole.places.length - 1])
    expect(broken.places[0]).not.toEqual(broken.places[broken.places.length - 1])
    expect(contourLines(gridOf(Array.from({ length: 5 }, () => Array.from({ length: 5 }, () => 100))), 'ft').lines).toEqual([])
  })
})

describe('the ground’s service', () => {
  const blob = encodeHeightGrid(hill())
  const service = groundService((hash) => Promise.resolve(hash === 'here' ? blob : undefined))

  test('gives heights at places, none outside, with the doubt the district states', async () => {
    const { bounds } = hill()
    const top = { lat: (bounds.north + bounds.south) / 2, lon: (bounds.east + bounds.west) / 2 }
    const found = await service.heights({ hash: 'here', verticalDoubt_ft: 2 }, [top, { lat: 0, lon: 0 }])
    if ('code' in found) throw new Error(found.code)
    expect(found[0]!.height_ft).toBeCloseTo(feetFromMetres(200), 3)
    // Half the spread of the samples around it, 5 m on a diagonal step, comes on top.
    expect(found[0]!.doubt_ft).toBeCloseTo(Math.hypot(2, feetFromMetres(5 * Math.SQRT2) / 2), 0)
    expect(found[1]).toBeUndefined()
  })

  test('says which elevation is missing', async () => {
    expect(await service.draw({ hash: 'gone' }, 'ft')).toMatchObject({ code: 'terrain-missing', severity: 'warn' })
  })
})
