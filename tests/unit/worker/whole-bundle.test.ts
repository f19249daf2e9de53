import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { importElevationWithNode } from '@/app/_worker/node/import-elevation-with-node'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import { BundleMaker } from '@/app/_worker/whole-bundle'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'
import { demoBundle } from '../../fixtures/demo-roads'

/*
 * The demonstration district's own roads and elevation, both invented, under a plan with a hose lay: what is saved to a file is
 * read back by the same door as the command line's.
 */
let asked: Bundle
let blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>

beforeAll(async () => {
  const bundle = demoBundle('school')
  const { district, plan } = bundle
  const set = { name: 'ostrel-valley', attribution: 'made up', importedOn: '2026-01-01' }
  const terrain = await importElevationWithNode(new Uint8Array(readFileSync('public/demo/ostrel-valley-elevation.tif')), 'ostrel-valley-elevation.tif', district.bounds!)
  const roads = await importWithNode(new Uint8Array(readFileSync('public/demo/ostrel-valley.osm.gz')), 'ostrel-valley.osm.gz')
  const [hash, ground] = ['a'.repeat(64), 'b'.repeat(64)]
  blobs = new Map([[hash, roads.graphBlob], [ground, terrain.terrainBlob]])
  const brook = district.sources.find(({ id }) => id === 'fiddlers-brook')!
  const school = district.hazards.find(({ id }) => id === plan.hazardId)!
  const read = readBundle(JSON.parse(JSON.stringify({
    ...bundle, legs: [],
    district: { ...district, roads: { ...set, hash }, terrain: { ...set, hash: ground, verticalDoubt_ft: 8, doubtBasis: 'entered', ...(district.terrain && { ...district.terrain, hash: ground }) } },
    plan: { ...plan, hoseLays: [{ id: 'lay1', name: 'Brook line', fromId: brook.id, toId: 'fireGround', points: [brook.point, school.point], pumperIds: ['engine-71'], stretches: [{ id: 's1', size_in: 5 }] }] },
  })))
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  asked = read
}, 120_000)

const throughAFile = (bundle: Bundle): Bundle => {
  const read = readBundle(JSON.parse(JSON.stringify(bundle)))
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}

describe('a plan saved to a file', () => {
  test('carries its ways and the ground under its hose lays, and is answered from it alone as on screen', async () => {
    const findBlob = async (hash: string) => blobs.get(hash)
    const { bundle, lacks } = await new BundleMaker(findBlob).make(asked)
    const answer = await new PlannerEngine(findBlob).begin({ ...asked, ...(bundle.layHeights && { layHeights: bundle.layHeights }) })
    expect(lacks).toEqual([])
    expect(bundle.legs.length).toBeGreaterThan(5)
    expect(bundle.layHeights?.[0]?.points.length).toBeGreaterThan(5)
    expect(answer.result.lays).toHaveLength(1)
    expect(evaluatePlan(throughAFile(bundle), { quick: true })).toEqual(answer.result)
  })

  test('without roads and elevation at hand says that it lacks them, and so does its answer', async () => {
    const { bundle, lacks } = await new BundleMaker(async () => undefined).make(asked)
    expect(lacks).toEqual(['ways', 'heights'])
    const codes = evaluatePlan(throughAFile(bundle), { quick: true }).issues.map(({ code }) => code)
    expect(codes).toEqual(expect.arrayContaining(['leg-unresolved', 'lay-heights-unread']))
  })
})
