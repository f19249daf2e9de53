'use client'

import type { InjectAnswer, Option, Outcome } from '@/lib/exercise'
import type { Exercise, Fact } from '@/lib/plan'
import { changeText } from '../_advice/change-text'
import { formatClock, formatMinutes, formatQuantity, listWords, type NameOf, say, type UnitSystem } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { DataTable } from '../_ui/data-table'
import { joinClasses } from '../_ui/join-classes'
import { ProgressBar } from '../_ui/progress-bar'
import type { BestState } from '../_worker/use-best-answers'
import { changeWords } from './change-words'
import shared from '../_look/shared.module.css'
import styles from './exercise.module.css'

type Row = { readonly id: string; readonly what: string; readonly outcome: Outcome }

/** For each trouble: what was decided, nothing at all, and the best that was found, side by side. */
export function BestPart({ best, exercise, facts, codes, names, system, onLook }: { best: BestState; exercise: Exercise; facts: readonly Fact[]; codes: ReadonlyMap<string, string>; names: NameOf; system: UnitSystem; onLook: () => void }) {
  return (
    <section className={styles.part} aria-labelledby="debrief-best">
      <h2 id="debrief-best" className={styles.heading}>{say('exercise.best')}</h2>
      <p className={styles.quiet}>{say('exercise.best.text')}</p>
      {best.state === 'idle' && <Button className={shared.screenOnly} label={say('exercise.best.look')} onClick={onLook} />}
      {best.state === 'working' && <div className={joinClasses(shared.screenOnly, styles.wide)}><ProgressBar label={say('exercise.best.working')} share={best.doneShare} onCancel={best.stop} /></div>}
      {(best.state === 'stopped' || best.state === 'failed') && <p role="status">{say(`exercise.best.${best.state}`)} <Button size="s" label={say('exercise.best.again')} onClick={best.again} /></p>}
      {best.answers?.length === 0 && <p>{say('exercise.best.none')}</p>}
      {best.answers?.map((answer) => {
        const fact = facts.find(({ id }) => id === answer.factId)
        return fact && <Answer key={answer.factId} answer={answer} fact={fact} title={exercise.injects.find(({ id }) => id === fact.injectId)?.title ?? changeWords(fact.change, names, system)} facts={facts} codes={codes} names={names} system={system} />
      })}
    </section>
  )
}

function Answer({ answer, fact, title, facts, codes, names, system }: { answer: InjectAnswer; fact: Fact; title: string; facts: readonly Fact[]; codes: ReadonlyMap<string, string>; names: NameOf; system: UnitSystem }) {
  const gallons = (volume_gal: number) => formatQuantity(volume_gal, 'gal', system, { style: 'headline' })
  const decided = facts.filter(({ id }) => answer.decisionIds.includes(id))
  const rows: Row[] = [
    { id: 'decided', outcome: answer.decided, what: decided.length === 0 ? say('exercise.best.nothing-decided') : say('exercise.best.decided', { what: decided.map(({ id, change }) => `${codes.get(id) ?? ''} ${changeWords(change, names, system)}`).join('; ') }) },
    ...(decided.length > 0 ? [{ id: 'nothing', what: say('exercise.best.nothing'), outcome: answer.nothing }] : []),
    ...answer.best.map(({ option, outcome }, i) => ({ id: `best-${i}`, what: say('exercise.best.option', { what: optionWords(option, names, system) }), outcome })),
  ]
  const [first] = answer.best
  const kept_gal = first ? answer.decided.missing_gal - first.outcome.missing_gal : 0
  return (
    <article className={styles.answer}>
      <h3><span className={styles.stamp}>{codes.get(fact.id)}</span> {formatClock(fact.at_s)} {title}</h3>
      <p>
        {answer.decided.missing_gal < 1 && answer.nothing.missing_gal < 1 ? say('exercise.best.harmless') : first && kept_gal >= 1 ? say('exercise.best.more', { water: gallons(kept_gal), what: optionWords(first.option, names, system) }) : say('exercise.best.well', { count: answer.triedCount })}
      </p>
      <DataTable
        caption={say('exercise.best.table', { title })} isCaptionHidden rows={rows} rowKey={({ id }) => id}
        columns={[
          { key: 'what', head: say('exercise.debrief.what'), cell: ({ what }) => what },
          { key: 'short', head: say('exercise.debrief.short'), isNumber: true, cell: ({ outcome }) => formatMinutes(outcome.short_s, 'up') },
          { key: 'missing', head: say('exercise.debrief.missing'), isNumber: true, cell: ({ outcome }) => gallons(outcome.missing_gal) },
          { key: 'back', head: say('exercise.debrief.recovered'), isNumber: true, cell: ({ outcome }) => recoveredWords(outcome.recovered_s) },
        ]}
      />
      <p className={styles.quiet}>{say('exercise.best.tried', { count: answer.triedCount })}</p>
    </article>
  )
}

/** From a moment until the water was back for good. */
export const recoveredWords = (recovered_s: number | undefined): string =>
  recovered_s === undefined ? say('exercise.debrief.recovered.never') : recovered_s === 0 ? say('exercise.debrief.recovered.none') : formatMinutes(recovered_s, 'up')

function optionWords(option: Option, names: NameOf, system: UnitSystem): string {
  if (option.kind === 'advice') return changeText(option.candidate, names, system)
  return say('exercise.best.send', { tenders: listWords(option.tenderIds.map((id) => names(id) ?? id)), site: names(option.toId) ?? option.toId })
}
