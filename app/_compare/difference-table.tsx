import { planDifferences } from '@/lib/plan'
import { say } from '../_text'
import '../_text/areas/compare'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { CompareColumn } from './compare-column'
import styles from './compare.module.css'
import { differenceTitle, differenceValue } from './difference-words'

/** What differs in the documents, in words. */
export function DifferenceTable({ columns }: { columns: readonly CompareColumn[] }) {
  const [system] = useUnitSystem()
  const differences = planDifferences(columns.map(({ plan }) => plan))
  const anyName = (id: string) => columns.map(({ names }) => names(id)).find((name) => name !== undefined)
  return (
    <section className={styles.part} aria-labelledby="compare-differences">
      <h2 className={styles.subtitle} id="compare-differences">{say('compare.differences')}</h2>
      <p className={styles.quiet}>{differences.length === 0 ? say('compare.differences.none') : say('compare.differences.count', { count: differences.length })}</p>
      {differences.length > 0 && (
        <div className={styles.scroll} role="group" aria-label={say('compare.differences')} tabIndex={0}>
          <table className={styles.table}>
            <thead><tr><th scope="col">{say('compare.differences.what')}</th>{columns.map(({ plan }) => <th key={plan.id} scope="col">{plan.name}</th>)}</tr></thead>
            <tbody>
              {differences.map((difference) => {
                const { part, place, itemIds, field, values } = difference
                return (
                  <tr key={JSON.stringify([part, place, itemIds, field])}>
                    <th scope="row">{differenceTitle(difference, anyName)}</th>
                    {columns.map(({ plan, names }, index) => <td key={plan.id} className={values[index] === undefined ? styles.words : undefined}>{differenceValue(field, values[index], names, system)}</td>)}
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}
