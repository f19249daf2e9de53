import Link from 'next/link'
import { helpFigureHref, type helpFigures } from '../_links/help-topics'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import '../_text/areas/compare'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { CompareColumn } from './compare-column'
import styles from './compare.module.css'
import { figureLines } from './figure-rows'

/** Lines whose figure the help explains. */
const helpOf: Readonly<Partial<Record<string, (typeof helpFigures)[number]>>> = {
  dependable: 'dependable', sustainable: 'expected', needed: 'needed', hauled: 'hauled', hand: 'hand', ready: 'ready', gap: 'gap', limit: 'limit',
}

/** Figures in columns; what meets the need, falls short of it or leads the line by a sign and the word. */
export function FigureTable({ columns }: { columns: readonly CompareColumn[] }) {
  const [system] = useUnitSystem()
  const ready = columns.flatMap(({ compared, names }) => (compared?.answer ? [{ result: compared.answer.result, names, isDoubting: compared.isDoubting === true }] : []))
  const lines = figureLines(ready, system)
  const failures = columns.filter(({ compared }) => compared?.failure)
  const shown = columns.filter(({ compared }) => compared?.answer)
  return (
    <section className={styles.part} aria-labelledby="compare-figures">
      <h2 className={styles.subtitle} id="compare-figures">{say('compare.figures')}</h2>
      {failures.map(({ plan, compared }) => <p key={plan.id} className={styles.failure}>{plan.name}: {say('compare.failed', { reason: compared?.failure ?? '' })}</p>)}
      {shown.length > 0 && (
        <div className={styles.scroll} role="group" aria-label={say('compare.figures')} tabIndex={0}>
          <table className={styles.table}>
            <thead><tr><th scope="col">{say('compare.figure')}</th>{shown.map(({ plan }) => <th key={plan.id} scope="col">{plan.name}</th>)}</tr></thead>
            <tbody>
              {lines.map(({ key, label, cells }) => (
                <tr key={key}>
                  <th scope="row">{helpOf[key] ? <Link className={styles.means} href={helpFigureHref(helpOf[key])}>{label}</Link> : label}</th>
                  {cells.map(({ text, isFigure, mark }, index) => (
                    <td key={shown[index]?.plan.id ?? index} className={isFigure ? styles.figure : styles.words} data-mark={mark?.look}>
                      {text}{mark && <span className={styles.mark}><Icon name={mark.look === 'good' ? 'check' : 'block'} size={12} />{mark.text}</span>}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className={styles.quiet}>{say('compare.best.hint')}</p>
    </section>
  )
}
