import { formatTime, say } from '../_text'
import '../_text/areas/handbook'

/** A difference of time in words: so much more or less a round. */
export function moreOrLess(more_s: number): string {
  return say(more_s < 0 ? 'handbook.less' : 'handbook.more', { time: formatTime(Math.abs(more_s)) })
}

