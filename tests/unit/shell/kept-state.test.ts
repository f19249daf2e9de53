import { expect, it } from 'vitest'
import { formatBytes } from '@/app/_device/format-bytes'
import { keptDistricts } from '@/app/_device/kept-state'
import { sampleDistrict, samplePlan } from '../client/sample-documents'

const dataSet = (hash: string) => ({ hash, name: 'map', importedOn: '2026-01-01', attribution: 'test' })
const shelved = (doc: object, keptAt: string, isDeleted = false) => ({ doc: doc as ReturnType<typeof sampleDistrict>, sequence: 1, isDeleted, keptAt })

it('says of a district what is here and what is not', async () => {
  const district = { ...sampleDistrict(), roads: dataSet('r'.repeat(64)), map: dataSet('m'.repeat(64)) }
  const [kept] = await keptDistricts(
    [shelved(district, '2026-01-01'), shelved(samplePlan(), '2026-01-03'), shelved({ ...samplePlan(), id: 'P2' }, '2026-01-02', true)],
    async (docId) => (docId === 'P' ? 3 : 0),
    async (hash) => (hash.startsWith('r') ? 2_500_000 : undefined),
  )
  expect(kept).toEqual({ id: 'D', name: 'Alder Hollow', keptAt: '2026-01-03', planCount: 1, exerciseCount: 0, logCount: 0, dataCount: 2, dataHereCount: 1, size_bytes: 2_500_000, isWhole: false, waitingCount: 3 })
})

it('gives sizes in megabytes, and in gigabytes from a thousand of them', () => {
  expect([formatBytes(2_540_000), formatBytes(54_000_000), formatBytes(10_700_000_000)]).toEqual(['2.5 MB', '54 MB', '10.7 GB'])
})
