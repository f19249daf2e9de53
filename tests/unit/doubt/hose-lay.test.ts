import { expect, test } from 'vitest'
import { prepareDoubt } from '@/lib/doubt'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

test('what a hose lay brings and when it stands may be off: both are doubted, the moment by seconds added', () => {
  const model = prepareDoubt(compilePlan(smallBundle({
    'district.apparatus.4': { id: 'p3', name: 'Engine 3', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 },
    'plan.hoseLays': [{
      id: 'lay1', name: 'Pond line', fromId: 'ds1', toId: 'fireGround', points: [{ lat: 45.02, lon: -40 }, { lat: 45.018, lon: -40 }], pumperIds: ['p3'],
      stretches: [{ id: 's1', size_in: 5, length_ft: 1000 }], rise_ft: 0, wanted_gpm: 200,
    }],
  })))!
  expect(model.inputs.filter(({ itemIds }) => itemIds.includes('lay1')).map(({ field }) => field).toSorted()).toEqual(['flow_gpm', 'laySetUp_s'])
  const at = (path: string) => model.numbers.find((number) => number.path === path)
  expect(at('feeds/0/flow_gpm')).toMatchObject({ planned: 200, adds: false })
  expect(at('feeds/0/ready_s')!.adds).toBe(true)
})
