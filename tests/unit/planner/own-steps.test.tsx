import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test, vi } from 'vitest'
import { OwnSteps } from '@/app/_plan/own-steps'
import { PlanBoardProvider, type PlanBoard } from '@/app/_plan/plan-context'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

vi.mock('next/navigation', () => ({ useRouter: () => ({ push: () => undefined }), usePathname: () => '/', useSearchParams: () => new URLSearchParams() }))

const nothing = (): void => undefined

function shown({ district, plan }: Bundle, bundle: Bundle): string {
  const board: PlanBoard = {
    district, plan, result: evaluatePlan(bundle), isWorking: false, names: () => undefined, selectedId: undefined, select: nothing, newId: () => 'n1',
    editPlan: () => true, editDistrict: () => true, editBoth: () => true,
  }
  return renderToStaticMarkup(<PlanBoardProvider board={board}><OwnSteps onPart={nothing} /></PlanBoardProvider>)
}

test('a first answer leads on to what nobody has measured, each step to where it is entered', () => {
  const bundle = smallBundle({ 'district.apparatus.0.stationId': undefined })
  const markup = shown(bundle, bundle)
  expect(markup).toContain('2 of 6 done')
  expect(markup).toContain('href="/district/d1/survey?item=ds1"')
  expect(markup).toContain('href="/district/d1/resources?item=p1"')
  expect(markup).toContain('href="/district/d1/log?plan=pl1"')
})

test('a plan that still lacks a first answer is not told what comes after it', () => {
  const bundle = smallBundle({ 'plan.tenders': [] })
  expect(shown(bundle, bundle)).toBe('')
})
