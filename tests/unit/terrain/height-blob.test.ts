import fc from 'fast-check'
import { expect, test } from 'vitest'
import { NO_HEIGHT, decodeHeightGrid, encodeHeightGrid, heightGrid } from '@/lib/terrain'
import { gridOf } from './grids'

const sample = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: -300, max: 300 }) }, { weight: 1, arbitrary: fc.integer({ min: -32767, max: 32767 }) }, { weight: 1, arbitrary: fc.constant(NO_HEIGHT) })

test('a grid comes back from its blob exactly, gaps and cliffs and all', () => {
  fc.assert(fc.property(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 2, max: 9 }), fc.infiniteStream(sample), (rowCount, columnCount, stream) => {
    const samples = Int16Array.from([...stream.take(rowCount * columnCount)])
    const grid = heightGrid({ ...gridOf([[100, 100], [100, 100]], 7), rowCount, columnCount, samples, doubtBasis: 'published' })
    expect(decodeHeightGrid(encodeHeightGrid(grid))).toEqual(grid)
  }))
})

test('smooth ground takes about one byte a sample', () => {
  const rows = Array.from({ length: 100 }, (_, row) => Array.from({ length: 100 }, (_, column) => 100 + 40 * Math.sin(row / 9) + 25 * Math.cos(column / 7)))
  expect(encodeHeightGrid(gridOf(rows)).length).toBeLessThan(11_000)
})

test('a blob with any one byte changed, cut short or lengthened is refused', () => {
  const blob = encodeHeightGrid(gridOf([[100, 120, undefined], [90, 80, 300]], 5))
  for (let i = 0; i < blob.length; i++) {
    const changed = blob.slice()
    changed[i] = (changed[i] ?? 0) ^ 0x15
    expect(decodeHeightGrid(changed)).toMatchObject({ code: 'terrain-unreadable' })
    expect(decodeHeightGrid(blob.slice(0, i))).toMatchObject({ code: 'terrain-unreadable' })
  }
  expect(decodeHeightGrid(new Uint8Array([...blob, 0]))).toMatchObject({ code: 'terrain-unreadable', values: { reason: 'damaged' } })
})

test('a blob of a newer version says so', () => {
  const blob = encodeHeightGrid(gridOf([[100, 120], [90, 80]]))
  new DataView(blob.buffer).setUint32(4, 99, true)
  expect(decodeHeightGrid(blob)).toMatchObject({ values: { reason: 'newer-version' } })
})
