import { expect, it } from 'vitest'
import type { Bundle } from '@/lib/plan'
import type { SupplyResult } from '@/lib/supply'
import { Planner } from '@/app/_worker/planner'
import type { PlanAnswer } from '@/app/_worker/planner-engine'
import type { PlannerService } from '@/app/_worker/planner-service'

const bundleOf = (id: string) => ({ plan: { id }, legs: [] }) as unknown as Bundle
const quickOf = (id: string): PlanAnswer => ({ result: { planId: id, links: [] } as unknown as SupplyResult, legs: [], uses: [], issues: [], isQuick: true })
const settled = async () => {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve()
}

function manualPlanner() {
  const wholes: { id: string; answer: () => void }[] = []
  const port: PlannerService = {
    begin: async ({ plan }) => quickOf(plan.id),
    drag: async () => Promise.reject(new Error('not asked for here')),
    warm: async () => undefined,
    explain: async () => undefined,
    chart: async () => undefined,
  }
  const planner = new Planner(port, {
    evaluate: ({ plan }) => new Promise((resolve) => void wholes.push({ id: plan.id, answer: () => resolve({ planId: plan.id, links: [1] } as unknown as SupplyResult) })),
  })
  return { planner, wholes }
}

it('answers at once without the limiting link, then with it', async () => {
  const { planner, wholes } = manualPlanner()
  const given: [string, boolean][] = []
  void planner.answer(bundleOf('a'), ({ result, isQuick }) => given.push([result.planId, isQuick]))
  await settled()
  expect(given).toEqual([['a', true]])
  wholes[0]!.answer()
  await settled()
  expect(given).toEqual([['a', true], ['a', false]])
})

it('says nothing more of a plan once a newer one has been asked about', async () => {
  const { planner, wholes } = manualPlanner()
  const given: [string, boolean][] = []
  const note = ({ result, isQuick }: PlanAnswer) => void given.push([result.planId, isQuick])
  void planner.answer(bundleOf('a'), note)
  await settled()
  void planner.answer(bundleOf('b'), note)
  void planner.answer(bundleOf('c'), note)
  await settled()
  wholes[0]!.answer()
  await settled()
  expect(wholes.map(({ id }) => id)).toEqual(['a', 'c'])
  wholes[1]!.answer()
  await settled()
  expect(given).toEqual([['a', true], ['c', true], ['c', false]])
})
