import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, test } from 'vitest'
import { importWithNode } from '@/app/_worker/node/import-with-node'
import { adviceService, type AdvicePart } from '@/app/_worker/advice-service'
import { advise, finish, requestList } from '@/lib/advise'
import { adviceBundle } from '../../fixtures/advice-bundle'
import { demoBundle, demoRoads } from '../../fixtures/demo-roads'

const ask = { flow_gpm: 200, by_s: 3600 }
let blob: Uint8Array

beforeAll(async () => {
  const file = fileURLToPath(new URL('../../../public/demo/ostrel-valley.osm.gz', import.meta.url))
  blob = (await importWithNode(new Uint8Array(readFileSync(file)), 'ostrel-valley.osm.gz')).graphBlob
})

/** A clock that has always moved on, so that messages are taken up after every simulation. */
function newService() {
  let now = 0
  return adviceService(async () => blob, async () => undefined, () => (now += 1000))
}

describe('advice behind messages', () => {
  test('is the same as without them, over the roads of the district', async () => {
    const bundle = demoBundle('gander-hill')
    const wanted = finish(advise(bundle, await demoRoads()))
    const parts: AdvicePart[] = []
    const done = newService().advise(bundle, (part) => { parts.push(part) })
    expect(await done).toBe(true)
    const got = parts.find((part) => part.kind === 'advice')
    expect(got?.kind === 'advice' && got.advice).toEqual(wanted)
    const shares = parts.flatMap((part) => (part.kind === 'progress' && part.stage === 'trying' ? [part.doneShare] : []))
    expect(shares.length).toBeGreaterThan(10)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    const gains = parts.filter((part) => part.kind === 'dependable').at(-1)
    expect(gains?.kind === 'dependable' && gains.gains.base_gpm).toBeGreaterThan(0)
    expect(gains?.kind === 'dependable' && gains.gains.base_gpm).toBeLessThan(wanted?.base.flow_gpm ?? 0)
  })

  test('a newer question ends the one under way', async () => {
    const service = newService()
    const parts: AdvicePart[] = []
    const first = service.advise(adviceBundle(), (part) => { parts.push(part) })
    const second = service.request(adviceBundle(), ask, () => undefined)
    expect(await first).toBe(false)
    expect(parts.filter(({ kind }) => kind === 'advice')).toEqual([])
    expect(await second).toEqual(finish(requestList(adviceBundle(), ask, (bundle) => bundle)))
  })

  test('a stop ends it', async () => {
    const service = newService()
    const asked = service.request(adviceBundle(), ask, () => { void service.stop() })
    expect(await asked).toBeUndefined()
  })

  test('a plan that is blocked is said to be', async () => {
    const parts: AdvicePart[] = []
    expect(await newService().advise(adviceBundle(({ plan }) => { plan.tenders = [] }), (part) => { parts.push(part) })).toBe(true)
    expect(parts).toEqual([{ kind: 'advice', advice: undefined }])
  })
})
