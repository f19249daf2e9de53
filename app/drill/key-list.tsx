import { say } from '../_text'
import '../_text/areas/drill'
import { leverKeys, PAUSE_KEY, switchKeys } from './keys'
import { leverNames, switchNames } from './lever'
import styles from './drill.module.css'

/** Which key does what. */
export function KeyList() {
  return (
    <div className={styles.keys}>
      <dl className={styles.pairs}>
        {leverNames.map((lever) => (
          <div key={lever}>
            <dt>{say(`drill.control.${lever}`)}</dt>
            <dd>{say('drill.keys.more-less', leverKeys[lever])}</dd>
          </div>
        ))}
        {switchNames.map((name) => (
          <div key={name}>
            <dt>{say(`drill.control.${name}`)}</dt>
            <dd>{say('drill.keys.toggle', { key: switchKeys[name] })}</dd>
          </div>
        ))}
        <div>
          <dt>{say('drill.keys.pause')}</dt>
          <dd>{PAUSE_KEY}</dd>
        </div>
      </dl>
      <p className={styles.quiet}>{say('drill.keys.slow')}</p>
    </div>
  )
}
