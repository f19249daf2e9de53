import type { ControlName, DrillControls } from './state'
import type { Move } from './hands'

/** One movement of the hand: changes of one control in one direction with no pause in them. */
export type Movement = {
  readonly control: ControlName
  readonly from: number
  readonly to: number
  readonly start_s: number
  readonly end_s: number
  /** Which of the run's moves make it up. */
  readonly moveIndexes: readonly number[]
}

/** A pause this long ends a movement. */
const PAUSE_S = 0.8

/** The run's moves as movements of the hand, in order of their start. */
export function movementsOf(start: Readonly<DrillControls>, moves: readonly Move[]): Movement[] {
  const movements: { control: ControlName; from: number; to: number; start_s: number; end_s: number; moveIndexes: number[] }[] = []
  const last: Partial<Record<ControlName, (typeof movements)[number]>> = {}
  moves.forEach((move, index) => {
    const open = last[move.control]
    const at = open?.to ?? start[move.control]
    const goesOn = open && move.at_s - open.end_s <= PAUSE_S && Math.sign(move.to - at) === Math.sign(open.to - open.from)
    if (goesOn) {
      open.to = move.to
      open.end_s = move.at_s
      open.moveIndexes.push(index)
      return
    }
    const movement = { control: move.control, from: at, to: move.to, start_s: move.at_s, end_s: move.at_s, moveIndexes: [index] }
    movements.push(movement)
    last[move.control] = movement
  })
  return movements
}
