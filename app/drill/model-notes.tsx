import { drillAssumptions, type AssumptionKind } from '@/lib/priming/drill'
import { say } from '../_text'
import '../_text/areas/drill'
import { Card } from '../_ui/card'
import styles from './drill.module.css'

const kinds: readonly AssumptionKind[] = ['physics', 'judgement', 'common-practice', 'left-out']

/** What stands behind the model, by kind. */
export function ModelNotes() {
  return (
    <Card title={say('drill.model')} summary={say('drill.model.lead')}>
      <div className={styles.notes}>
        {kinds.map((kind) => (
          <section key={kind}>
            <h4>{say(`drill.kind.${kind}`)}</h4>
            <ul className={styles.bullets}>
              {drillAssumptions.filter((one) => one.kind === kind).map(({ code }) => <li key={code}>{say(`drill.assumption.${code}`)}</li>)}
            </ul>
          </section>
        ))}
      </div>
    </Card>
  )
}
