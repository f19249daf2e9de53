import { say } from '../_text'
import '../_text/areas/compare'
import { joinClasses } from '../_ui/join-classes'
import styles from './overlay.module.css'

/** How a plan is told from the others where they lie over each other: a letter and the dashes of its lines, never a colour alone. */
const planMarks = [
  { letter: 'A', dash: undefined },
  { letter: 'B', dash: '7 4' },
  { letter: 'C', dash: '2 3' },
  { letter: 'D', dash: '10 3 2 3' },
] as const

export type PlanMark = (typeof planMarks)[number]
export const markOfPlan = (index: number): PlanMark => planMarks[index % planMarks.length] ?? planMarks[0]

type Props = { names: readonly string[]; chosen: number | undefined; onChoose: (index: number | undefined) => void }

/** The plans by letter; one that is pressed stands out and the others step back. */
export function PlanKeys({ names, chosen, onChoose }: Props) {
  return (
    <ul className={styles.keys} aria-label={say('compare.overlay.keys')}>
      {names.map((name, index) => {
        const { letter, dash } = markOfPlan(index)
        return (
          <li key={letter}>
            <button type="button" className={joinClasses(styles.key, chosen === index && styles.pressed)} aria-pressed={chosen === index} onClick={() => { onChoose(chosen === index ? undefined : index) }}>
              <svg width="34" height="12" aria-hidden="true"><line x1="1" x2="33" y1="6" y2="6" className={styles.line} strokeDasharray={dash} /></svg>
              <strong>{letter}</strong> {name}
            </button>
          </li>
        )
      })}
    </ul>
  )
}
