import { dayOrders, findField, mappableFields, plainEnds, unitWords, usualUnit, type ColumnUse, type FoundFile, type ItemList } from '@/lib/exchange'
import { say } from '../_text'
import '../_text/areas/exchange'
import { useUnitSystem } from '../_ui/unit-system-context'
import { endName } from './exchange-words'
import styles from './exchange.module.css'

type Columns = Readonly<Record<string, ColumnUse>>

/** Columns of another's file: what each becomes, and in which unit it stands. */
export function ColumnMapper({ file, list, columns, onChange }: { file: FoundFile; list: ItemList; columns: Columns; onChange: (columns: Columns) => void }) {
  const [system] = useUnitSystem()
  const put = (column: string, use: ColumnUse | undefined) => {
    // One end has one column: the last that a person says.
    const others = Object.entries(columns).filter(([name, { to }]) => name !== column && to !== use?.to)
    onChange({ ...Object.fromEntries(others), ...(use && { [column]: use }) })
  }
  const freshUse = (to: string): ColumnUse | undefined => {
    if (to === '') return undefined
    const spec = findField(list, to)
    return { to, ...(spec?.unit && { unit: usualUnit(spec.unit, system !== 'us') }), ...(spec?.type === 'day' && { unit: dayOrders[0] }) }
  }
  const ends = file.format === 'csv' ? plainEnds : plainEnds.filter((end) => end === 'name' || end === 'notes')
  return (
    <section aria-labelledby="exchange-columns">
      <h3 id="exchange-columns" className={styles.small}>{say('exchange.columns')}</h3>
      <p className={styles.quiet}>{say('exchange.columns.hint')}</p>
      <div className={styles.scroll}>
        <table className={styles.columns}>
          <thead><tr>{(['column', 'column.example', 'column.to', 'column.unit'] as const).map((key) => <th key={key} scope="col">{say(`exchange.${key}`)}</th>)}</tr></thead>
          <tbody>
            {file.columns.map((column) => {
              const use = columns[column]
              const forms = use ? formsOf(list, use.to) : []
              return (
                <tr key={column}>
                  <th scope="row">{column}</th>
                  <td className={styles.cell}>{exampleOf(file, column)}</td>
                  <td>
                    <select className={styles.select} data-left={!use} aria-label={say('exchange.column.to-of', { column })} value={use?.to ?? ''} onChange={(event) => { put(column, freshUse(event.target.value)) }}>
                      <option value="">{say('exchange.column.left')}</option>
                      {ends.map((end) => <option key={end} value={end}>{endName(end)}</option>)}
                      {mappableFields(list).map(({ path }) => <option key={path} value={path}>{endName(path)}</option>)}
                    </select>
                  </td>
                  <td>
                    {use && forms.length > 0 && (
                      <select className={styles.select} aria-label={say('exchange.column.unit-of', { column })} value={use.unit ?? ''} onChange={(event) => { put(column, { ...use, unit: event.target.value }) }}>
                        {forms.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}
                      </select>
                    )}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
    </section>
  )
}

const exampleOf = ({ features }: FoundFile, column: string): string => String(features.find(({ values }) => values[column] !== undefined)?.values[column] ?? '').slice(0, 60)

const spelling: Readonly<Record<string, string>> = { l: 'L', 'l/min': 'L/min', 'l/s': 'L/s', m3: 'm³', 'm3/h': 'm³/h', kpa: 'kPa', inhg: 'inHg', '°f': '°F', '°c': '°C', sqft: 'sq ft', m2: 'm²', hpa: 'hPa', mbar: 'mbar', mmhg: 'mmHg', cuft: 'cu ft', ac: 'acres' }

/** Units that a column of a quantity may be in, or orders of day, month and year. */
function formsOf(list: ItemList, to: string): { value: string; label: string }[] {
  const spec = findField(list, to)
  if (spec?.type === 'day') return dayOrders.map((value) => ({ value, label: say(`exchange.order.${value === 'month/day/year' ? 'month-day-year' : value === 'day/month/year' ? 'day-month-year' : value}`) }))
  return spec?.unit ? unitWords(spec.unit).map((value) => ({ value, label: spelling[value] ?? value })) : []
}
