import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test, vi } from 'vitest'
import { ChainColumn } from '@/app/_plan/chain-column'
import { partId } from '@/app/_plan/part-focus'
import { PlanBoardProvider, type PlanBoard } from '@/app/_plan/plan-context'
import { say } from '@/app/_text'
import { ToastProvider } from '@/app/_ui/toast'
import { UnitSystemProvider } from '@/app/_ui/unit-system-context'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

vi.mock('next/navigation', () => ({ useRouter: () => ({ push: () => undefined }), usePathname: () => '/', useSearchParams: () => new URLSearchParams() }))
// A browser fetches them; here they are at hand.
vi.mock('@/app/_plan/cards', async () => ({ ...(await import('@/app/_plan/card-bodies')), loadCards: () => Promise.resolve() }))

const nothing = (): void => undefined

test('the card of every part can be gone to, and the fire ground has the needed flow as its first figure', () => {
  const bundle = smallBundle()
  const board: PlanBoard = {
    ...bundle, result: evaluatePlan(bundle), isWorking: false, names: () => undefined, selectedId: undefined, select: nothing, newId: () => 'n1',
    editPlan: () => true, editDistrict: () => true, editBoth: () => true,
  }
  const markup = renderToStaticMarkup(
    <UnitSystemProvider initial="us">
      <ToastProvider>
        <PlanBoardProvider board={board}>
          <ChainColumn part="fireGround" onPart={nothing} placing={undefined} isGuided={false} onPlacing={nothing} onGuide={nothing} viaOf={undefined} onVia={nothing} sites={[]} issues={[]} onLook={nothing} />
        </PlanBoardProvider>
      </ToastProvider>
    </UnitSystemProvider>,
  )
  for (const part of ['fill', 'road', 'tenders', 'dump', 'fireGround'] as const) expect(markup).toContain(`id="${partId(part)}"`)
  const [, fire = ''] = markup.split(`id="${partId('fireGround')}"`)
  const id = /<input[^>]* inputMode[^>]*>/i.exec(fire)?.[0].match(/ id="([^"]+)"/)?.[1]
  expect(id).toBeDefined()
  expect(fire).toContain(`for="${id}">${say('plan.demand')}</label>`)
})
