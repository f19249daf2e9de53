'use client'

import type { Inject } from '@/lib/plan'
import { formatClock, say } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { useAddress } from '../_ui/use-address'
import styles from './exercise.module.css'
import type { ExerciseDesk } from './use-exercise'

/**
 * How a prime drill went that was played for a trouble, offered to whoever leads: the pump draws again that long after the
 * trouble came, or a note says that it does not.
 */
export function DrillOutcome({ desk }: { desk: ExerciseDesk }) {
  const { fact: factId, primed } = useAddress('fact', 'primed')
  const { exercise, names, clock_s } = desk
  const fact = exercise?.facts.find(({ id }) => id === factId)
  if (!exercise || !fact || fact.change.kind !== 'fillRate' || primed === undefined || desk.isEnded) return null
  const id = `drill-${fact.id}`.slice(0, 64)
  const isTaken = exercise.injects.some((one) => one.id === id) || exercise.notes.some((one) => one.id === id)
  const primed_s = primed === 'no' ? undefined : Number(primed)
  if (isTaken || (primed_s !== undefined && !(primed_s >= 0 && primed_s <= 86_400))) return null
  const site = names(fact.change.fillSiteId) ?? fact.change.fillSiteId
  const words = primed_s === undefined ? say('exercise.drill.not-primed', { site }) : say('exercise.drill.primed', { site, time: formatClock(primed_s) })
  const { fillSiteId } = fact.change
  const take = () => {
    if (primed_s === undefined) {
      desk.edit({ kind: 'addItem', collection: 'notes', item: { id, at_s: clock_s, by: say('exercise.seat.facilitator'), role: 'facilitator', text: words } }, say('exercise.note.add'))
      return
    }
    const at_s = fact.at_s + primed_s
    const inject: Inject = { id, title: words.slice(0, 120), trigger: at_s > clock_s ? { kind: 'time', at_s } : { kind: 'hand' }, change: { kind: 'fillRate', fillSiteId, rateShare: 1 } }
    desk.edit({ kind: 'addItem', collection: 'injects', item: inject }, say('exercise.drill.take'))
    if (at_s <= clock_s) desk.bring(inject)
  }
  return (
    <section className={styles.offer} role="status">
      <p>{words}</p>
      <p className={styles.quiet}>{primed_s === undefined ? say('exercise.drill.not-primed.what') : fact.at_s + primed_s > clock_s ? say('exercise.drill.primed.at', { time: formatClock(fact.at_s + primed_s) }) : say('exercise.drill.primed.now')}</p>
      <Button size="s" look="primary" label={say('exercise.drill.take')} onClick={take} />
    </section>
  )
}
