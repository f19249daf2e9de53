import { controlNames, type ControlName, type DrillControls, type DrillState } from './state'

/** One movement of one control: to a position, over a time. */
export type Move = {
  readonly at_s: number
  readonly control: ControlName
  readonly to: number
  /** Time the movement takes, evenly; absent: at once. */
  readonly over_s?: number
}

/** Whoever works the panel: sets the controls before each step, may look at the gauges. */
export type Hands = (controls: DrillControls, state: Readonly<DrillState>) => void

/**
 * Hands that play a script. Moves of one control in order of time; a later one takes over
 * from one still under way.
 *
 * @param moves in any order
 */
export function scriptHands(moves: readonly Move[]): Hands {
  const perControl = controlNames.map((control) => ({
    control, moves: moves.filter((move) => move.control === control).sort((a, b) => a.at_s - b.at_s), next: 0, from: 0, from_s: 0,
  }))
  return (controls, state) => {
    for (const track of perControl) {
      // Half a microsecond of slack: times are sums of steps.
      let upcoming = track.moves[track.next]
      while (upcoming && upcoming.at_s <= state.time_s + 5e-7) {
        track.from = controls[track.control]
        track.from_s = upcoming.at_s
        track.next += 1
        upcoming = track.moves[track.next]
      }
      const current = track.moves[track.next - 1]
      if (!current) continue
      const done = current.over_s ? Math.min(1, (state.time_s - track.from_s) / current.over_s) : 1
      controls[track.control] = track.from + (current.to - track.from) * done
    }
  }
}
