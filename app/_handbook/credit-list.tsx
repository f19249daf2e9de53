import type { District, Plan } from '@/lib/plan'
import type { CreditCheck, CreditLineCode } from '@/lib/supply'
import { itemHref, screenHref } from '../_links/screens'
import { fieldName, formatGiven, isTextKey, say, type NameOf } from '../_text'
import '../_text/areas/handbook'
import { Icon } from '../_look/icon'
import { ButtonLink } from '../_ui/button-link'
import { useUnitSystem } from '../_ui/unit-system-context'
import { creditWords, ruleWords } from './credit-words'
import styles from './handbook.module.css'
import { VerdictMark } from './verdict-mark'

type Props = { credit: CreditCheck; names: NameOf; district: District; plan: Plan }

const sourceOf = (code: CreditLineCode) => (code === 'volume' ? 'handbook.source.volume' : code === 'tested-pumps' ? 'handbook.source.tests' : 'handbook.source.rating')

/** What is asked of a steady supply, line by line: passed, failed or not known, and what is still to be entered. */
export function CreditList({ credit, names, district, plan }: Props) {
  const [system] = useUnitSystem()
  const count = (verdict: string) => credit.lines.filter((line) => line.verdict === verdict).length
  return (
    <section className={styles.part} aria-label={say('handbook.credit')}>
      <h3 className={styles.subtitle}>{say('handbook.credit.title', ruleWords(system))}</h3>
      <p className={styles.small}>{say('handbook.credit.hint')}</p>
      {credit.compared && <p className={styles.small}>{say('handbook.credit.compared', { by: credit.compared.by, flow: formatGiven(credit.compared.flow_gpm, system) })}</p>}
      <p className={styles.estimate}><Icon name="warn" size={16} />{say('caution.credit')}</p>
      <p className={styles.line}><VerdictMark verdict={credit.verdict} /><span>{say(`handbook.credit.${credit.verdict}`, { count: count('fail'), unknown: count('unknown') })}</span></p>
      <ol className={styles.lines}>
        {credit.lines.map((line) => (
          <li key={line.code} className={styles.creditLine}>
            <VerdictMark verdict={line.verdict} />
            <div>
              <p className={styles.lineTitle}>{say(`handbook.line.${line.code}`, ruleWords(system))}</p>
              <p>{creditWords(line, credit, names, system)}</p>
              {line.missing.length > 0 && (
                <ul className={styles.missing}>
                  {line.missing.map(({ itemId, field }) => {
                    const key = `handbook.field.${field}`
                    const label = isTextKey(key) ? say(key) : fieldName(field)
                    return (
                      <li key={`${itemId} ${field}`}>
                        <ButtonLink look="quiet" size="s" icon="edit" href={hrefOf(itemId, district, plan)} label={itemId === plan.id ? say('handbook.credit.missing-own', { field: label }) : say('handbook.credit.missing', { field: label, name: names(itemId) ?? itemId })} />
                      </li>
                    )
                  })}
                </ul>
              )}
              <p className={styles.small}>{say('handbook.source.label', { source: say(sourceOf(line.code)) })}</p>
            </div>
          </li>
        ))}
      </ol>
    </section>
  )
}

/** Where the missing figure is entered: the item's card in Resources or Survey, else the plan itself. */
function hrefOf(itemId: string, district: District, plan: Plan): string {
  if (district.apparatus.some(({ id }) => id === itemId)) return itemHref('resources', district.id, itemId)
  if (district.sources.some(({ id }) => id === itemId)) return itemHref('survey', district.id, itemId)
  return screenHref('plan', district.id, plan.id)
}
