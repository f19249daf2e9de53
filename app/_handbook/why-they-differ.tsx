import type { TenderComparison } from '@/lib/supply'
import { formatQuantity, formatTime, say } from '../_text'
import '../_text/areas/handbook'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './handbook.module.css'
import { moreOrLess } from './signed'
import { wholeParts } from './whole-parts'

/** What takes form B's round to the simulated one, in seconds that add up to the rounds as they stand in the table. */
export function WhyTheyDiffer({ tender: { annex, own, simulated, parts, notes } }: { tender: TenderComparison }) {
  const [system] = useUnitSystem()
  const round_s = Math.round((simulated ?? own).round_s)
  const more_s = round_s - Math.round(annex.round_s)
  const shown_s = wholeParts(parts.map((part) => part.more_s), more_s)
  const gallons = (value: number) => formatQuantity(value, 'gal', system)
  const lines = parts.flatMap(({ code }, index) => {
    const part_s = shown_s[index] ?? 0
    return part_s === 0 ? [] : [{ code, text: say(`handbook.why.${code}`, { more: moreOrLess(part_s) }) }]
  })
  return (
    <div className={styles.why}>
      <h5 className={styles.whyTitle}>{say('handbook.why')}</h5>
      {lines.length === 0 ? <p>{say('handbook.why.same')}</p> : <ul>{lines.map(({ code, text }) => <li key={code}>{text}</li>)}</ul>}
      {lines.length > 0 && <p>{say(simulated ? 'handbook.why.together' : 'handbook.why.together.own', { more: moreOrLess(more_s), form: formatTime(annex.round_s), simulated: formatTime(round_s) })}</p>}
      {notes.map((note) => <p key={note}>{say(`handbook.why.${note}`, { form: gallons(annex.counted_gal), given: gallons((simulated ?? own).counted_gal) })}</p>)}
    </div>
  )
}
