import type { EventsView } from '../_client'
import { say } from '../_text'
import '../_text/areas/log'
import { joinClasses } from '../_ui/join-classes'
import styles from './log.module.css'

/** Where the events are: on this device, on the way, at the station, or nowhere safe. */
export function LogState({ events }: { events: EventsView }) {
  const { unsent, unkept, isAway, refused } = events
  const words = unkept.size > 0 && isAway
    ? say('log.state.unkept', { count: unkept.size })
    : refused !== undefined && unsent.size > 0
      ? say('log.state.refused', { reason: refused })
      : unsent.size === 0 ? say('log.state.sent') : say(isAway ? 'log.state.waiting' : 'log.state.sending', { count: unsent.size })
  const isBad = (unkept.size > 0 && isAway) || (refused !== undefined && unsent.size > 0)
  return <p role="status" className={joinClasses(styles.state, isBad && styles.bad)}>{words}</p>
}
