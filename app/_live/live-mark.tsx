import { Icon, type IconName } from '../_look/icon'
import { formatMoment, say } from '../_text'
import '../_text/areas/exercise'
import styles from './live-mark.module.css'
import type { LiveState } from './live-stream'

const icons: Readonly<Record<LiveState['kind'], IconName>> = { live: 'check', 'catching-up': 'arrowRight', 'cut-off': 'warn', refused: 'warn' }

function words(state: LiveState): string {
  if (state.kind !== 'cut-off') return say(`exercise.live.${state.kind}`)
  return state.heardAt_ms === undefined ? say('exercise.live.never') : say('exercise.live.cut-off', { time: formatMoment(state.heardAt_ms, { hasSeconds: true }) })
}

/** Whether what is shown is what is so, in words. */
export function LiveMark({ state }: { state: LiveState }) {
  return <span className={styles.mark} data-state={state.kind} role="status"><Icon name={icons[state.kind]} size={14} /> <span>{words(state)}</span></span>
}
