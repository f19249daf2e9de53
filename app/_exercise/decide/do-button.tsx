import { say } from '../../_text'
import '../../_text/areas/exercise'
import { Button } from '../../_ui/button'
import styles from '../exercise.module.css'

/**
 * Does what was entered; while it cannot, the line under it says why.
 *
 * @param missing     names of the fields that are still to be filled, in their order
 * @param isUnchanged all is filled, and nothing would be other than now
 */
export function DoButton({ missing, isUnchanged = false, isOff, onDo }: { missing: readonly string[]; isUnchanged?: boolean; isOff: boolean; onDo: () => void }) {
  const why = isOff ? say('exercise.decide.ended') : missing.length > 0 ? say('exercise.decide.missing', { fields: missing.join(', ') }) : isUnchanged ? say('exercise.decide.unchanged') : undefined
  return (
    <>
      <Button look="primary" label={say('exercise.decide.do')} whyNot={why} onClick={onDo} />
      {why !== undefined && <p className={styles.quiet}>{why}</p>}
    </>
  )
}
