import { Icon, type IconName } from '../_look/icon'
import { say } from '../_text'
import styles from './live-mark.module.css'
import type { LiveState } from './live-stream'

const icons: Readonly<Record<LiveState['kind'], IconName>> = { live: 'check', 'catching-up': 'arrowRight', 'cut-off': 'warn', refused: 'warn' }

const clockOf = (at_ms: number): string => new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit', second: '2-digit' }).format(new Date(at_ms))

function words(state: LiveState): string {
  if (state.kind !== 'cut-off') return say(`exercise.live.${state.kind}`)
  return state.heardAt_ms === undefined ? say('exercise.live.never') : say('exercise.live.cut-off', { time: clockOf(state.heardAt_ms) })
}

/** Whether what is shown is what is so, in words. */
export function LiveMark({ state }: { state: LiveState }) {
  return <span className={styles.mark} data-state={state.kind} role="status"><Icon name={icons[state.kind]} size={14} /> <span>{words(state)}</span></span>
}
