import type { StreamEvent } from '../_live/event-text'
import type { SeatNews } from '@/lib/exercise'
import type { ExerciseClock } from '@/lib/plan'
import { numberOfId, type SeatAnswer, type SeatInfo } from './seat-messages'

export type LoggedFact = Extract<SeatNews, { kind: 'fact' }>
export type LoggedNote = Extract<SeatNews, { kind: 'note' }>

/** What a seat has heard so far. */
export type SeatState = {
  /** Number of the last news that is in here. */
  readonly number: number
  readonly info?: SeatInfo
  readonly answer?: SeatAnswer
  readonly facts: readonly LoggedFact[]
  readonly notes: readonly LoggedNote[]
  readonly clock?: ExerciseClock
  readonly endedAt_s?: number
  /** The exercise was put away. */
  readonly isGone: boolean
}

export const emptySeat: SeatState = { number: 0, facts: [], notes: [], isGone: false }

/**
 * What a seat knows once an event has come.
 *
 * @returns undefined where news are missing before this one: they have to be asked for again
 */
export function afterEvent(state: SeatState, { event, id, data }: StreamEvent): SeatState | undefined {
  switch (event) {
    case 'begin': {
      const { after } = JSON.parse(data) as { after: number }
      if (after === state.number) return { ...state, isGone: false }
      return after === 0 ? { ...emptySeat, ...(state.info && { info: state.info }) } : undefined
    }
    case 'seat':
      return { ...state, info: JSON.parse(data) as SeatInfo }
    case 'now':
      return { ...state, answer: JSON.parse(data) as SeatAnswer }
    case 'gone':
      return { ...state, isGone: true }
    case 'news': {
      const number = numberOfId(id)
      if (number <= state.number) return state
      return number === state.number + 1 ? { ...afterNews(state, JSON.parse(data) as SeatNews), number } : undefined
    }
    default:
      return state
  }
}

function afterNews(state: SeatState, news: SeatNews): SeatState {
  const { clock: _clock, endedAt_s: _ended, ...rest } = state
  switch (news.kind) {
    case 'fact':
      return { ...state, facts: [...state.facts, news] }
    case 'factGone':
      return { ...state, facts: state.facts.filter(({ id }) => id !== news.id) }
    case 'note':
      return { ...state, notes: [...state.notes, news] }
    case 'noteGone':
      return { ...state, notes: state.notes.filter(({ id }) => id !== news.id) }
    case 'clock':
      return { ...rest, ...(state.endedAt_s !== undefined && { endedAt_s: state.endedAt_s }), ...(news.clock && { clock: news.clock }) }
    case 'ended':
      return { ...rest, ...(state.clock && { clock: state.clock }), ...(news.at_s !== undefined && { endedAt_s: news.at_s }) }
  }
}
