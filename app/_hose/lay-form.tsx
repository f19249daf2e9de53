'use client'

import type { Point } from '@/lib/geo'
import type { Lay } from '@/lib/plan'
import { defaults, type HoseLayAnswer } from '@/lib/supply'
import { relayDefaults } from '@/lib/relay'
import { ItemFields } from '../_fields/item-context'
import { ItemCheck, ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { usePlanBoard } from '../_plan/plan-context'
import { say, sayIssue } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { ChoiceField } from '../_ui/choice-field'
import { PointField } from '../_ui/point-field'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { ApplianceFields } from './appliance-fields'
import { CrossingFields } from './crossing-fields'
import styles from './hose.module.css'
import type { LayEnd } from './lay-ends'
import { withHalfway } from './lay-points'
import { StretchFields } from './stretch-fields'
import { findRoadWay } from './use-hose-study'

const MOST_PUMPERS = 13
const assumed = (value: number) => ({ value, mark: 'assumed' as const, source: say('hose.of.default') })

export type LayFormProps = {
  lay: Lay
  begins: readonly LayEnd[]
  goals: readonly LayEnd[]
  answer: HoseLayAnswer | undefined
  isPlacing: boolean
  onPlacing: (isPlacing: boolean) => void
  onPoints: (points: readonly Point[], label: string) => void
}

/** All that is entered of a lay: ends, pumpers, hose, the points of its way, pressures. */
export function LayForm({ lay, begins, goals, answer, isPlacing, onPlacing, onPoints }: LayFormProps) {
  const { district, plan, names, editPlan } = usePlanBoard()
  const toast = useToast()
  const [system] = useUnitSystem()
  const set = (fields: Record<string, unknown>, label: string) => { editPlan({ kind: 'setFields', collection: 'hoseLays', id: lay.id, set: fields }, label) }
  const setEnd = (field: 'fromId' | 'toId', ends: readonly LayEnd[], id: string | undefined) => {
    const end = ends.find((one) => one.id === id)
    if (end) set({ [field]: end.id, points: lay.points.with(field === 'fromId' ? 0 : lay.points.length - 1, end.point) }, say(field === 'fromId' ? 'hose.from' : 'hose.to'))
  }
  const alongRoads = () => {
    void findRoadWay({ district, plan, layId: lay.id }).then(
      (found) => { if (Array.isArray(found)) onPoints(found, say('hose.point.roads')); else toast({ text: sayIssue(found, names, system), look: 'danger' }) },
      (error: unknown) => { toast({ text: say('hose.failed', { reason: String(error) }), look: 'danger' }) },
    )
  }
  const choices = (ends: readonly LayEnd[]) => ends.map(({ id, name }) => ({ value: id, label: name }))
  const pumps = district.apparatus.filter(({ kind }) => kind !== 'tender')
  const setPumper = (index: number, id: string | undefined) => {
    set({ pumperIds: id === undefined ? lay.pumperIds.toSpliced(index, 1) : index < lay.pumperIds.length ? lay.pumperIds.with(index, id) : [...lay.pumperIds, id] }, say('hose.pumpers'))
  }
  const pumperChoices = (own: string | undefined) => pumps.filter(({ id }) => id === own || !(lay.pumperIds as string[]).includes(id)).map(({ id, name }) => ({ value: id as string, label: name }))
  const hasTerrain = answer ? answer.heights === 'terrain' || answer.heights === 'terrain-measured' : district.terrain !== undefined
  return (
    <ItemFields docId={plan.id} docKind="plan" collection="hoseLays" item={lay}>
      <Card title={say('hose.form')} startsOpen>
        <div className={styles.fields}>
          <ItemText field="name" isRequired />
          <ChoiceField label={say('hose.from')} choices={choices(begins)} value={lay.fromId} onCommit={(id) => { setEnd('fromId', begins, id) }} />
          <ChoiceField label={say('hose.to')} choices={choices(goals)} value={lay.toId} onCommit={(id) => { setEnd('toId', goals, id) }} />
          <ItemQuantity field="wanted_gpm" hint={say('hose.wanted.hint')} />
          <ItemCheck field="isLeftOut" label={say('hose.left-out')} hint={say('hose.left-out.hint')} />
          {!lay.isLeftOut && <ItemQuantity field="start_s" absent={say('hose.start.none')} />}
          <ItemQuantity field="rise_ft" hint={say(hasTerrain ? 'hose.rise.hint.terrain' : 'hose.rise.hint.none')} />
        </div>
      </Card>
      <Card title={say('hose.pumpers')} startsOpen>
        <div className={styles.fields}>
          {lay.pumperIds.map((id, index) => (
            <ChoiceField
              key={id} label={index === 0 ? say('hose.pumper.source') : say('hose.pumper.next', { number: index + 1 })}
              none={say('hose.pumper.out')} choices={pumperChoices(id)} value={id} onCommit={(next) => { setPumper(index, next) }}
            />
          ))}
          {lay.pumperIds.length < MOST_PUMPERS && (
            <ChoiceField
              key={`add-${lay.pumperIds.length}`} label={lay.pumperIds.length === 0 ? say('hose.pumper.source') : say('hose.pumper.add')} none={say('hose.pumper.none')}
              choices={pumperChoices(undefined)} value={undefined} onCommit={(id) => { if (id !== undefined) setPumper(lay.pumperIds.length, id) }}
            />
          )}
          <ItemChoice field="mode" none={say('hose.mode.default')} />
          {district.roads && <ItemCheck field="standsOnRoads" label={say('hose.on-roads')} hint={say('hose.on-roads.hint')} />}
          <ItemCheck field="standsAtPoints" label={say('hose.stands')} hint={say('hose.stands.hint')} />
        </div>
      </Card>
      <Card title={say('hose.stretches')} startsOpen><StretchFields lay={lay} answer={answer} /></Card>
      <Card title={say('hose.appliances')} aside={lay.appliances?.length ?? 0}><ApplianceFields lay={lay} /></Card>
      <Card title={say('hose.crossings')} aside={lay.crossings?.length ?? 0}><CrossingFields lay={lay} /></Card>
      <Card title={say('hose.points')} aside={lay.points.length}>
        <div className={styles.fields}>
          <p className={styles.quiet}>{say('hose.points.hint')}</p>
          <div className={styles.points}>
            {lay.points.map((point, index) => (
              <div key={index} className={styles.fields}>
                <PointField label={say('hose.point', { number: index + 1 })} value={point} isRequired onCommit={(next) => { if (next) onPoints(lay.points.with(index, next), say('hose.point.moved', { number: index + 1 })) }} />
                {index > 0 && index < lay.points.length - 1 && (
                  <Button look="quiet" size="s" icon="trash" label={say('hose.point.remove', { number: index + 1 })} onClick={() => { onPoints(lay.points.toSpliced(index, 1), say('hose.point.remove', { number: index + 1 })) }} />
                )}
              </div>
            ))}
          </div>
          <div className={styles.buttons}>
            <Button size="s" icon="add" label={say('hose.point.add')} onClick={() => { onPoints(withHalfway(lay.points), say('hose.point.add')) }} />
            {district.roads && <Button size="s" icon="plan" label={say('hose.point.roads')} onClick={alongRoads} />}
            <Button size="s" icon="pick" label={say('hose.point.place')} aria-pressed={isPlacing} onClick={() => { onPlacing(!isPlacing) }} />
          </div>
          {isPlacing && <p className={styles.hint} role="status">{say('hose.point.placing')}</p>}
        </div>
      </Card>
      <Card title={say('hose.settings')}>
        <div className={styles.fields}>
          <ItemQuantity field="lift_ft" />
          <ItemQuantity field="residual_psi" standIn={assumed(relayDefaults.residual_psi)} />
          <ItemQuantity field="outlet_psi" standIn={assumed(relayDefaults.outlet_psi)} />
          <ItemCount field="crewCount" standIn={defaults.layCrewCount.value} />
          <ItemCount field="bedCount" standIn={1} />
        </div>
      </Card>
      <Button
        look="danger" size="s" icon="trash" label={say('hose.remove', { name: lay.name })}
        onClick={() => { editPlan({ kind: 'removeItem', collection: 'hoseLays', id: lay.id }, say('hose.remove', { name: lay.name })) }}
      />
    </ItemFields>
  )
}
