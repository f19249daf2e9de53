import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { LayAnswer } from '@/app/_hose/lay-answer'
import { LayForm } from '@/app/_hose/lay-form'
import { layBegins, layGoals } from '@/app/_hose/lay-ends'
import { PlanBoardProvider, type PlanBoard } from '@/app/_plan/plan-context'
import type { UnitSystem } from '@/app/_text'
import { Providers } from '@/app/_frame/providers'
import { namesOf } from '@/lib/plan'
import { answerLay } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const nothing = (): void => undefined
const words = (markup: string): string => markup.replace(/<[^>]+>/g, ' ').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim()

const lay = {
  id: 'lay1', name: 'Pond to barn', fromId: 'ds1', toId: 'fireGround', points: [{ lat: 45.02, lon: -40 }, { lat: 45.01, lon: -40 }], pumperIds: ['p1', 'p2'],
  stretches: [{ id: 's1', size_in: 4, length_ft: 4000 }], rise_ft: 60,
}

function shown(changes: object, system: UnitSystem = 'us'): string {
  const bundle = smallBundle({ 'plan.hoseLays': [{ ...lay, ...changes }], 'plan.fillSites.0.pumperId': undefined, 'plan.dumpSites.0.pumperId': undefined })
  const { district, plan } = bundle
  const one = plan.hoseLays![0]!
  const itemNames = namesOf(bundle)
  const names = (id: string) => itemNames.get(id) ?? (id === 'fireGround' ? 'Barn' : undefined)
  const board: PlanBoard = { district, plan, result: undefined, isWorking: false, names, selectedId: undefined, select: nothing, newId: () => 'n1', editPlan: () => true, editDistrict: () => true, editBoth: () => true }
  const answer = answerLay(bundle, one)
  return words(renderToStaticMarkup(
    <Providers system={system} theme={undefined}>
      <PlanBoardProvider board={board}>
        <LayForm lay={one} begins={layBegins(district)} goals={layGoals(district, plan, names)} answer={answer} isPlacing={false} onPlacing={nothing} onPoints={nothing} />
        <LayAnswer study={{ answer }} lay={one} />
      </PlanBoardProvider>
    </Providers>,
  ))
}

describe('the page of a lay', () => {
  test('says flow, places, pressures, orders and hose, and leaves no value out of a sentence', () => {
    const text = shown({ wanted_gpm: 500 })
    // 4 in hose by the handbook's row (C 0.2, seen): 500 gpm over 4,000 ft loses 0.2 · 25 · 40 = 200 psi, more than one hose of 180 psi bears.
    expect(text).toContain('Engine 2')
    expect(text).toMatch(/500 gpm as wanted; the most is \d+ gpm/)
    expect(text).toMatch(/Engine 1 0 ft drafts \d+ psi/)
    expect(text).toMatch(/Engine 2: raise the discharge to \d+ psi/)
    expect(text).toContain('4 in 4,000 ft 0 ft 0 ft')
    expect(text).toMatch(/Pressures when one pumper stops .*Engine 1 none nobody draws the water .*Engine 2 \d+ gpm Engine 1 drafts \d+ psi of \d+ psi/)
    expect(text).toContain('C 0.2, handbook; 180 psi, usual')
    expect(text).not.toMatch(/undefined|NaN|\{|\}/)
  })

  test('follows metric', () => {
    const text = shown({ wanted_gpm: 500 }, 'metric')
    expect(text).toMatch(/kPa/)
    expect(text).not.toMatch(/\d (?:gpm|psi|ft)\b/)
  })

  test('blocked, it says why and shows no flow', () => {
    const text = shown({ pumperIds: [] })
    expect(text).toContain('Pond to barn has no pumper')
    expect(text).not.toContain('To start')
  })

  test('an open relay drafts at each pumper', () => {
    const text = shown({ mode: 'open', rise_ft: 0 })
    expect(text.match(/ft drafts/g)?.length).toBe(2)
    expect(text).not.toMatch(/undefined|NaN|\{|\}/)
  })
})
