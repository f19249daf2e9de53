import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test, vi } from 'vitest'
import { AnswerBar } from '@/app/_plan/answer-bar'
import { ChainColumn } from '@/app/_plan/chain-column'
import { PlanBoardProvider, type PlanBoard } from '@/app/_plan/plan-context'
import { Providers } from '@/app/_frame/providers'
import { namesOf } from '@/lib/plan'
import { evaluatePlan, type SupplyResult } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

vi.mock('next/navigation', () => ({ useRouter: () => ({ push: () => undefined }), usePathname: () => '/', useSearchParams: () => new URLSearchParams() }))
// A browser fetches them; here they are at hand.
vi.mock('@/app/_plan/cards', async () => ({ ...(await import('@/app/_plan/card-bodies')), loadCards: () => Promise.resolve() }))

const nothing = (): void => undefined
const bundle = smallBundle()
const names = (id: string) => namesOf(bundle).get(id) ?? (id === 'fireGround' ? 'Barn' : undefined)

function shown(result: SupplyResult | undefined): { text: string; markup: string } {
  const isWorking = result === undefined
  const board: PlanBoard = { district: bundle.district, plan: bundle.plan, result, isWorking, names, selectedId: undefined, select: nothing, newId: () => 'n1', editPlan: () => true, editDistrict: () => true, editBoth: () => true }
  const markup = renderToStaticMarkup(
    <Providers system="us" theme={undefined}>
      <PlanBoardProvider board={board}>
        <AnswerBar pending={{ answer: isWorking, limitingLink: isWorking }} />
        <ChainColumn part={undefined} onPart={nothing} placing={undefined} isGuided={false} onPlacing={nothing} onGuide={nothing} viaOf={undefined} onVia={nothing} sites={[]} issues={result?.issues ?? []} onLook={nothing} />
      </PlanBoardProvider>
    </Providers>,
  )
  return { markup, text: markup.replace(/<[^>]+>/g, ' ').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ') }
}

test('while the first answer is worked out nothing is said to be missing or to be in order', () => {
  const { text, markup } = shown(undefined)
  expect(text).toContain('The answer is being worked out.')
  expect(text).toContain('being worked out')
  expect(text).not.toMatch(/0 things|no way|not in the shuttle|no needed flow|No flow can/)
  expect(markup).toContain('aria-busy="true"')
})

test('once it is there its figures stand in place of that', () => {
  const { text, markup } = shown(evaluatePlan(bundle))
  expect(text).not.toContain('being worked out')
  expect(text).toMatch(/expected [\d,]+ gpm/)
  expect(markup).not.toContain('aria-busy="true"')
})
