import { readFileSync } from 'node:fs'
import { gunzipSync, inflateSync } from 'node:zlib'
import { demoFiles, demoFolder } from '@/app/_demo/demo-files'
import { readOsm, type OsmExtract } from '@/lib/osm'
import { readBundle, isBundle, type Bundle, type District, type Plan } from '@/lib/plan'

const fileOf = (name: string): Buffer => readFileSync(new URL(name, demoFolder))

export const shippedMap = (): string => String(gunzipSync(fileOf(demoFiles.map)))
export const shippedElevation = (): Buffer => fileOf(demoFiles.elevation)
export const shippedDistrict = (): District => JSON.parse(String(fileOf(demoFiles.district))) as District
export const shippedPlans = (): Plan[] => JSON.parse(String(fileOf(demoFiles.plans))) as Plan[]

export function shippedBundle(planId: string): Bundle {
  const read = readBundle(JSON.parse(String(fileOf(demoFiles.bundleOf(planId)))))
  if (!isBundle(read)) throw new RangeError(`bundle of ${planId} is refused: ${JSON.stringify(read)}`)
  return read
}

export async function shippedExtract(): Promise<OsmExtract> {
  const read = await readOsm(fileOf(demoFiles.map), { inflate: (bytes) => inflateSync(bytes), gunzip: (bytes) => gunzipSync(bytes) })
  if ('code' in read) throw new RangeError(`the demo map is refused: ${read.code}`)
  return read
}
