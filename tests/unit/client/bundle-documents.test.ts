import { expect, it } from 'vitest'
import { isBundle, readBundle } from '@/lib/plan'
import { bundleFromDocuments, copyOfPlan, documentsFromBundle } from '@/app/_client/bundle-documents'
import { sampleDistrict, samplePlan } from './sample-documents'

const counter = () => {
  let count = 0
  return () => `new-${(count += 1)}`
}

it('a bundle made of documents is read as a bundle', () => {
  const bundle = bundleFromDocuments(sampleDistrict(), samplePlan())
  const read = readBundle(JSON.parse(JSON.stringify(bundle)))
  expect(isBundle(read) && read).toEqual(bundle)
})

it('opening a bundle writes over nothing: both documents get new ids, and belong together', () => {
  const { district, plan } = documentsFromBundle(bundleFromDocuments(sampleDistrict(), samplePlan()), counter())
  expect(district).toEqual({ ...sampleDistrict(), id: 'new-1' })
  expect(plan).toEqual({ ...samplePlan(), id: 'new-2', districtId: 'new-1' })
})

it('a copy of a plan stays in its district, and its name never outgrows the field', () => {
  const copy = copyOfPlan(samplePlan(), 'Barn copy'.padEnd(200, '!'), counter())
  expect(copy).toEqual({ ...samplePlan(), id: 'new-1', name: 'Barn copy'.padEnd(120, '!') })
})
