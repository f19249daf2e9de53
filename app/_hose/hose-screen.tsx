'use client'

import { useState } from 'react'
import { screenHref } from '../_links/screens'
import { PlanStudy, type Study } from '../_plan/plan-study'
import { formatQuantity, say } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { EmptyState } from '../_ui/empty-state'
import { ObjectList } from '../_ui/object-list'
import { useUnitSystem } from '../_ui/unit-system-context'
import shared from '../_look/shared.module.css'
import styles from './hose.module.css'
import { layBegins, layGoals } from './lay-ends'
import { LayDesk } from './lay-desk'
import { newLay } from './new-lay'
import { WheelsPart } from './wheels-part'
import { wayDistances_ft } from '@/lib/supply'

/** Hose lays of a plan: drawn on the map, worked out as relays. */
export function HoseScreen({ districtId, planId }: { districtId: string; planId: string }) {
  return <PlanStudy districtId={districtId} planId={planId} page="hose">{(study) => <Hose {...study} />}</PlanStudy>
}

function Hose({ board, bundle }: Study) {
  const { district, plan, names, editPlan, newId } = board
  const [system] = useUnitSystem()
  const [chosenId, setChosenId] = useState<string>()
  const lays = plan.hoseLays ?? []
  const lay = lays.find(({ id }) => id === chosenId) ?? lays[0]
  const begins = layBegins(district)
  const goals = layGoals(district, plan, names)
  const add = () => {
    const made = newLay({ district, plan, begins, goals, name: say('hose.name', { number: lays.length + 1 }), newId })
    if (!made) return
    editPlan({ kind: 'addItem', collection: 'hoseLays', item: made }, say('hose.add'))
    setChosenId(made.id)
  }
  const canAdd = begins.length > 0 && goals.length > 0
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <div>
          <h2 className={styles.title}>{say('hose.title')}</h2>
          <p className={styles.intro}>{say('hose.intro')}</p>
          {lay && <p className={styles.intro}>{say('hose.in-plan')}</p>}
        </div>
        {lay && <Button label={say('hose.print')} icon="print" size="s" className={shared.screenOnly} onClick={() => { window.print() }} />}
      </header>
      {begins.length === 0 && (
        <EmptyState title={say('hose.no-source')} text={say('hose.no-source.text')}><ButtonLink href={screenHref('survey', district.id)} label={say('hose.to-survey')} /></EmptyState>
      )}
      {begins.length > 0 && goals.length === 0 && <EmptyState title={say('hose.no-end')} text={say('hose.no-end.text')} />}
      {canAdd && !lay && (
        <EmptyState title={say('hose.empty')} text={say('hose.empty.text')}><Button look="primary" icon="add" label={say('hose.add')} onClick={add} /></EmptyState>
      )}
      {lay && (
        <>
          <div className={styles.lays}>
            {lays.length > 1 && (
              <ObjectList
                label={say('hose.list')} selectedId={lay.id} onSelect={setChosenId}
                items={lays.map((one) => ({ id: one.id, name: one.name, detail: formatQuantity(wayDistances_ft(one.points).at(-1) ?? 0, 'ft', system) }))}
              />
            )}
            {canAdd && <Button icon="add" size="s" label={say('hose.add')} className={shared.screenOnly} onClick={add} />}
          </div>
          <LayDesk key={lay.id} lay={lay} begins={begins} goals={goals} />
        </>
      )}
      {begins.length > 0 && <WheelsPart bundle={bundle} begins={begins} />}
      <Caution kinds={['pressure', 'traffic', 'planning-aid']} />
    </div>
  )
}
