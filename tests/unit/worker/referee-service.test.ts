import { expect, it } from 'vitest'
import { refereeService } from '@/app/_worker/referee-service'
import type { Fact } from '@/lib/plan'
import { demoBundle } from '@/tests/fixtures/demo-roads'

const bundle = demoBundle('gander-hill')
const facts: Fact[] = [{ id: 'stop', at_s: 2400, cause: 'inject', by: '', change: { kind: 'fillRate', fillSiteId: bundle.plan.fillSites[0]!.id, rateShare: 0 } }]
const service = () => {
  let now_ms = 0
  return refereeService(() => Promise.resolve(undefined), () => Promise.resolve(), () => (now_ms += 50))
}

it('closes no road, and changes nothing that needs new ways, where the roads are not at hand', async () => {
  expect(await service().closures(bundle, [])).toEqual([])
  const point = { lat: bundle.plan.fillSites[0]!.point.lat + 0.01, lon: bundle.plan.fillSites[0]!.point.lon }
  expect(await service().change(bundle, [{ kind: 'moveSite', collection: 'fillSites', id: bundle.plan.fillSites[0]!.id, point }], [])).toBeUndefined()
  expect(await service().change(bundle, [{ kind: 'setFields', collection: 'fillSites', id: bundle.plan.fillSites[0]!.id, set: { bayCount: 3 } }], [])).toMatchObject({ kind: 'plan', legs: [] })
})

it('says how far it is, and answers nothing once it is stopped', async () => {
  const shares: number[] = []
  const answers = await service().best(bundle, facts, 5400, (share) => shares.push(share))
  expect(answers?.map(({ factId }) => factId)).toEqual(['stop'])
  expect(shares.length).toBeGreaterThan(3)
  expect(shares).toEqual(shares.toSorted((a, b) => a - b))
  const stopped = service()
  const asked = stopped.best(bundle, facts, 5400, () => { void stopped.stop() })
  expect(await asked).toBeUndefined()
})
