import { expect, test } from 'vitest'
import { demoBounds } from '@/app/_demo/frame'
import { shippedDistrict, shippedElevation } from './shipped-demo'

/** A reader of its own, after the TIFF 6.0 layout: header, one directory of 12-byte entries, values in place or at an offset. */
function readTiff(bytes: Buffer): { tags: Map<number, number[]>; heightAt(column: number, row: number): number } {
  expect(bytes.toString('latin1', 0, 2)).toBe('II')
  expect(bytes.readUInt16LE(2)).toBe(42)
  const directory = bytes.readUInt32LE(4)
  const tags = new Map<number, number[]>()
  for (let i = 0; i < bytes.readUInt16LE(directory); i++) {
    const entry = directory + 2 + i * 12
    const [type, count] = [bytes.readUInt16LE(entry + 2), bytes.readUInt32LE(entry + 4)]
    const size = { 2: 1, 3: 2, 4: 4, 12: 8 }[type] ?? 0
    const at = size * count <= 4 ? entry + 8 : bytes.readUInt32LE(entry + 8)
    tags.set(bytes.readUInt16LE(entry), Array.from({ length: count }, (_, k) =>
      type === 3 ? bytes.readUInt16LE(at + 2 * k) : type === 4 ? bytes.readUInt32LE(at + 4 * k) : type === 12 ? bytes.readDoubleLE(at + 8 * k) : bytes.readUInt8(at + k)))
  }
  const [columns, data] = [tags.get(256)![0]!, tags.get(273)![0]!]
  return { tags, heightAt: (column, row) => bytes.readFloatLE(data + 4 * (row * columns + column)) }
}

const tiff = readTiff(shippedElevation())
const [columns, rows] = [tiff.tags.get(256)![0]!, tiff.tags.get(257)![0]!]

test('the file is one plain band of 32-bit floats, whole to its last byte', () => {
  expect(tiff.tags.get(258)).toEqual([32])
  expect(tiff.tags.get(259)).toEqual([1])
  expect(tiff.tags.get(339)).toEqual([3])
  expect(tiff.tags.get(279)).toEqual([columns * rows * 4])
  expect(tiff.tags.get(273)![0]! + columns * rows * 4).toBe(shippedElevation().length)
  expect(shippedElevation().length).toBeLessThan(600_000)
})

test('entries of the directory ascend, as TIFF 6.0 demands', () => {
  const numbers = [...tiff.tags.keys()]
  expect(numbers).toEqual(numbers.toSorted((a, b) => a - b))
})

test('it lies over the map', () => {
  const { west, north, east, south } = demoBounds()
  const [scaleX, scaleY] = tiff.tags.get(33550)!
  const [, , , originX, originY] = tiff.tags.get(33922)!
  expect([originX, originY]).toEqual([west, north])
  expect(west + columns * scaleX!).toBeGreaterThanOrEqual(east)
  expect(north - rows * scaleY!).toBeLessThanOrEqual(south)
  expect(tiff.tags.get(34735)!.slice(-12, -8)).toEqual([2048, 0, 1, 4326])
})

test('it names the unit of its heights: the last of the five geo keys it counts is 4099, metre', () => {
  const keys = tiff.tags.get(34735)!
  expect(keys.length).toBe(4 + 4 * keys[3]!)
  expect(keys.slice(-4)).toEqual([4099, 0, 1, 9001])
})

test('the reservoir lies level at the height the district gives it', () => {
  const source = shippedDistrict().sources.find(({ id }) => id === 'stonecrop-reservoir')!
  const [scaleX, scaleY] = tiff.tags.get(33550)!
  const { west, north } = demoBounds()
  const [column, row] = [Math.floor((source.point.lon - west) / scaleX!), Math.floor((north - source.point.lat) / scaleY!)]
  for (const [i, j] of [[0, 0], [2, 1], [-2, -1], [1, -2]] as const)
    expect(tiff.heightAt(column + i, row + j) / 0.3048).toBeCloseTo(source.surfaceElevation_ft!, -0.5)
})
