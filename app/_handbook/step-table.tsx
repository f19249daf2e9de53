import type { ComparisonStep, HandbookComparison } from '@/lib/supply'
import { formatGiven, formatSignedChange, say } from '../_text'
import '../_text/areas/handbook'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './handbook.module.css'

/** Less than this is not shown as a step of its own. */
const SEEN_GPM = 0.5

/** The way from the form's figure to the sustained flow, a line for each thing that takes or gives. */
export function StepTable({ comparison }: { comparison: HandbookComparison }) {
  const [system] = useUnitSystem()
  const shown = comparison.steps.filter(({ change_gpm }) => Math.abs(change_gpm) >= SEEN_GPM)
  const silent = comparison.steps.filter(({ change_gpm }) => Math.abs(change_gpm) < SEEN_GPM)
  const most_gpm = Math.max(comparison.rating_gpm, ...comparison.steps.map(({ figure_gpm }) => figure_gpm))
  const flow = (gpm: number) => formatGiven(gpm, system)
  return (
    <section className={styles.part} aria-labelledby="handbook-steps">
      <h3 className={styles.subtitle} id="handbook-steps">{say('handbook.steps')}</h3>
      <p className={styles.small}>{say('handbook.steps.hint')}</p>
      <table className={styles.steps} aria-labelledby="handbook-steps">
        <thead>
          <tr><th scope="col">{say('handbook.steps.what')}</th><th scope="col" className={styles.number}>{say('handbook.steps.change')}</th><th scope="col" className={styles.number}>{say('handbook.steps.figure')}</th><td className={styles.barCell} /></tr>
        </thead>
        <tbody>
          <tr><th scope="row">{say('handbook.steps.begin')}</th><td className={styles.number}>{say('handbook.none')}</td><td className={styles.number}>{flow(comparison.rating_gpm)}</td><td className={styles.barCell}><Bar before_gpm={comparison.rating_gpm} after_gpm={comparison.rating_gpm} most_gpm={most_gpm} /></td></tr>
          {shown.map((step) => (
            <tr key={step.code}>
              <th scope="row">{say(`handbook.step.${step.code}`)}{step.code === 'tanks' && <span className={styles.small}>{say(`handbook.limit.${comparison.limitedBy}`)}</span>}</th>
              <td className={styles.number}>{formatSignedChange(step.figure_gpm - step.change_gpm, step.figure_gpm, system)}</td>
              <td className={styles.number}>{flow(step.figure_gpm)}</td>
              <td className={styles.barCell}><StepBar step={step} most_gpm={most_gpm} /></td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr><th scope="row">{say('handbook.form.sustained')}</th><td /><td className={styles.number}>{flow(comparison.sustainable_gpm)}</td><td className={styles.barCell} /></tr>
        </tfoot>
      </table>
      {!shown.some(({ code }) => code === 'tanks') && <p className={styles.small}>{say(`handbook.limit.${comparison.limitedBy}`)}</p>}
      {silent.length > 0 && <p className={styles.small}>{say('handbook.steps.none', { list: silent.map(({ code }) => lowered(say(`handbook.step.${code}`))).join('; ') })}</p>}
    </section>
  )
}

const lowered = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`

const StepBar = ({ step, most_gpm }: { step: ComparisonStep; most_gpm: number }) => <Bar before_gpm={step.figure_gpm - step.change_gpm} after_gpm={step.figure_gpm} most_gpm={most_gpm} />

/** What is left in full, what the step takes hatched, what it gives outlined: told apart without colour. */
function Bar({ before_gpm, after_gpm, most_gpm }: { before_gpm: number; after_gpm: number; most_gpm: number }) {
  const at = (gpm: number) => (most_gpm > 0 ? (gpm / most_gpm) * 100 : 0)
  const low = Math.min(before_gpm, after_gpm)
  const high = Math.max(before_gpm, after_gpm)
  return (
    <svg className={styles.bar} viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
      <rect className={styles.left} x="0" y="2" width={at(low)} height="10" />
      <rect className={after_gpm < before_gpm ? styles.taken : styles.given} x={at(low)} y="2" width={at(high) - at(low)} height="10" />
    </svg>
  )
}
