import { formatChange, formatTime, say, type UnitSystem } from '../_text'

/** From one flow to another with its sign, a real minus sign before it. */
export function signedFlow(before_gpm: number, after_gpm: number, system: UnitSystem): string {
  return after_gpm < before_gpm ? `−${formatChange(after_gpm, before_gpm, system)}` : `+${formatChange(before_gpm, after_gpm, system)}`
}

/** A difference of time in words: so much more or less a round. */
export function moreOrLess(more_s: number): string {
  return say(more_s < 0 ? 'handbook.less' : 'handbook.more', { time: formatTime(Math.abs(more_s)) })
}

