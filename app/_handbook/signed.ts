import { formatQuantity, formatTime, say, type UnitSystem } from '../_text'

/** A change of flow with its sign, a real minus sign before it. */
export function signedFlow(change_gpm: number, system: UnitSystem): string {
  const size = formatQuantity(Math.abs(change_gpm), 'gpm', system)
  return `${change_gpm < 0 ? '−' : '+'}${size}`
}

/** A difference of time in words: so much more or less a round. */
export function moreOrLess(more_s: number): string {
  return say(more_s < 0 ? 'handbook.less' : 'handbook.more', { time: formatTime(Math.abs(more_s)) })
}

