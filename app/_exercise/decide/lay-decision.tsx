'use client'

import { useState } from 'react'
import { distanceM } from '@/lib/geo'
import { getClient } from '../../_client'
import { layBegins, layGoals } from '../../_hose/lay-ends'
import { say } from '../../_text'
import '../../_text/areas/exercise'
import { ChoiceField } from '../../_ui/choice-field'
import { DoButton } from './do-button'
import { CheckList, choicesOf, unitChoices } from './fields'
import type { DecisionForm } from './form'
import { layFor } from './plan-edits'

/** A hose lay from now on: one that the plan has ready, or one along the road between two places. */
export function LayDecision({ session, names, by, isOff, decideLay, done }: DecisionForm) {
  const { bundle } = session.now.world
  const { plan, district } = bundle
  const [readyId, setReady] = useState<string>()
  const [fromId, setFrom] = useState<string>()
  const [toId, setTo] = useState<string>()
  const [pumperIds, setPumpers] = useState<readonly string[]>([])
  const ready = (plan.hoseLays ?? []).filter(({ isLeftOut }) => isLeftOut)
  const goals = layGoals(district, plan, names)
  // Hose is short: the water nearest to where it is wanted first.
  const [goal] = goals
  const begins = layBegins(district).sort((a, b) => (goal ? distanceM(a.point, goal.point) - distanceM(b.point, goal.point) : 0))
  const from = begins.find(({ id }) => id === fromId), to = goals.find(({ id }) => id === toId)
  const lay = () => {
    const kept = ready.find(({ id }) => id === readyId)
    if (kept) {
      const { isLeftOut: _out, ...laid } = kept
      return laid
    }
    return from && to && pumperIds.length > 0 ? layFor(bundle, from, to, pumperIds, () => getClient().newId()) : undefined
  }
  const missing = readyId !== undefined ? [] : [
    ...(from ? [] : [say('exercise.decide.lay.from')]), ...(to ? [] : [say('exercise.decide.lay.to')]), ...(pumperIds.length > 0 ? [] : [say('exercise.decide.lay.pumpers')]),
  ]
  const act = async () => {
    const made = lay()
    if (made && await decideLay(made, by)) done()
  }
  return (
    <>
      {ready.length > 0 && <ChoiceField label={say('exercise.decide.lay.ready')} none={say('exercise.decide.lay.new')} value={readyId} choices={choicesOf(ready, names)} onCommit={setReady} />}
      {readyId === undefined && (
        <>
          <ChoiceField label={say('exercise.decide.lay.from')} value={fromId} choices={choicesOf(begins, names)} onCommit={setFrom} />
          <ChoiceField label={say('exercise.decide.lay.to')} value={toId} choices={choicesOf(goals, names)} onCommit={setTo} />
          <CheckList legend={say('exercise.decide.lay.pumpers')} choices={unitChoices(bundle, 'pumper', names)} value={pumperIds} onCommit={setPumpers} />
        </>
      )}
      <p>{say('exercise.decide.lay.note')}</p>
      <DoButton missing={missing} isOff={isOff} onDo={() => { void act() }} />
    </>
  )
}
