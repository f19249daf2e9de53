'use client'

import { useId } from 'react'
import type { Hazard } from '@/lib/plan'
import { findHazardFlow_gpm, findNeededFlow } from '@/lib/supply'
import { useItem } from '../_fields/item-context'
import { choiceLabel } from '../_fields/choice-label'
import { ItemQuantity } from '../_fields/item-inputs'
import { formatAsked, formatQuantity, say, sayIssue } from '../_text'
import '../_text/areas/survey'
import { Caution } from '../_ui/caution'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './survey.module.css'

/** The needed flow by every method, side by side, and which of them the plans are held to. */
export function NeededFlowChoice({ hazard }: { hazard: Hazard }) {
  const { set } = useItem()
  const [system] = useUnitSystem()
  const name = useId()
  const needed = findNeededFlow(hazard)
  const held_gpm = findHazardFlow_gpm(hazard)
  const byRule = findNeededFlow({ ...hazard, neededBy: undefined })
  const isOfficer = hazard.needed_gpm !== undefined && (hazard.neededBy === undefined || hazard.neededBy === 'officer')
  const chosen = isOfficer ? 'officer' : hazard.neededBy === undefined || hazard.neededBy === 'officer' ? undefined : hazard.neededBy
  const flow = (value: number) => formatAsked(value, system)
  const noName = () => undefined

  const row = (value: string | undefined, title: string, figure: string, notes: readonly string[], isOutside = false) => (
    <label key={value ?? 'rule'} className={styles.method} data-chosen={chosen === value}>
      <input type="radio" name={name} checked={chosen === value} onChange={() => { set({ neededBy: value }) }} />
      <span className={styles.methodWords}>
        <span className={styles.methodTitle}>{title}</span>
        {isOutside && <span className={styles.attention}>{say('survey.method.outside')}</span>}
        {notes.map((note) => <span key={note} className={styles.how}>{note}</span>)}
      </span>
      <span className={styles.methodFigure}>{figure}</span>
    </label>
  )
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>{say('survey.needed')}</legend>
      <div className={styles.fields}>
        <ItemQuantity field="needed_gpm" label={say('choice.neededBy.officer')} />
        {!needed && <p className={styles.quiet}>{say('survey.needed.missing')}</p>}
        {(needed || hazard.needed_gpm !== undefined) && (
          <div className={styles.methods} role="radiogroup" aria-label={say('survey.held-to')}>
            {hazard.needed_gpm !== undefined && row('officer', choiceLabel('neededBy', 'officer'), flow(hazard.needed_gpm), [])}
            {byRule && hazard.needed_gpm === undefined && row(undefined, say('survey.method.rule'), flow(byRule.flow_gpm), [say('survey.method.rule.text', { method: choiceLabel('neededBy', byRule.chosen) })])}
            {needed?.methods.map(({ method, flow_gpm, supply_gal, duration_s, isValid, issues }) => row(method, choiceLabel('neededBy', method), flow(flow_gpm), [
              ...(supply_gal === undefined ? [] : [say('survey.method.supply', { volume: formatQuantity(supply_gal, 'gal', system) })]),
              ...(duration_s === undefined ? [] : [say('survey.method.duration', { time: formatQuantity(duration_s, 's', system, { style: 'headline' }) })]),
              ...issues.filter(({ code }) => code !== 'outside-method-range').map((one) => sayIssue(one, noName, system)),
            ], !isValid))}
          </div>
        )}
        {held_gpm !== undefined && <p className={styles.held}>{say('survey.held', { flow: flow(held_gpm) })}</p>}
        {needed?.issues.map((one) => <p key={one.code} className={styles.how}>{sayIssue(one, noName, system)}</p>)}
        <Caution kinds={['credit']} />
      </div>
    </fieldset>
  )
}
