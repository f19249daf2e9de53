import { advanceDrill, giveUpDrill, STEP_S, type Drill } from '@/lib/priming/drill'
import { LEVER_TAP_SHARE, leverFromOpening, leverNames, leverSharePerS, openingFromLever, type LeverName, type SwitchName } from './lever'

/** Whoever shows the desk: told of levers that moved by themselves, and of the end. */
export type DeskWatcher = { onLever(lever: LeverName, position: number): void; onSwitch(name: SwitchName, isOn: boolean): void }

/** The hands at the panel: what is held down, where the levers stand, and the clock of a run. */
export type Desk = {
  readonly drill: Drill
  isPaused(): boolean
  setPaused(isPaused: boolean): void
  setLever(lever: LeverName, position: number): void
  tapLever(lever: LeverName, direction: 1 | -1): void
  /** Direction 0 lets go. */
  holdLever(lever: LeverName, direction: 1 | -1 | 0, isSlow?: boolean): void
  letGo(): void
  toggle(name: SwitchName): void
  giveUp(): void
  /** Moves what is held and steps the model by the time of one frame. */
  frame(frame_s: number): void
}

/** A frame longer than this was no frame: the window was hidden. */
const LONGEST_FRAME_S = 0.1
const SLOW_SHARE = 0.25

export function createDesk(drill: Drill, watcher: DeskWatcher): Desk {
  const positions = Object.fromEntries(leverNames.map((lever) => [lever, leverFromOpening(lever, drill.controls[lever])])) as Record<LeverName, number>
  const held = Object.fromEntries(leverNames.map((lever) => [lever, 0])) as Record<LeverName, number>
  let paused = false
  let owed_s = 0

  const setLever = (lever: LeverName, position: number): void => {
    const next = Math.max(0, Math.min(1, position))
    positions[lever] = next
    drill.controls[lever] = openingFromLever(lever, next)
    watcher.onLever(lever, next)
  }
  return {
    drill,
    isPaused: () => paused,
    setPaused: (isPaused) => { paused = isPaused },
    setLever,
    tapLever: (lever, direction) => { setLever(lever, positions[lever] + direction * LEVER_TAP_SHARE) },
    holdLever: (lever, direction, isSlow = false) => { held[lever] = direction * (isSlow ? SLOW_SHARE : 1) },
    letGo: () => { for (const lever of leverNames) held[lever] = 0 },
    toggle: (name) => {
      const isOn = drill.controls[name] === 0
      drill.controls[name] = isOn ? 1 : 0
      watcher.onSwitch(name, isOn)
    },
    giveUp: () => { giveUpDrill(drill) },
    frame: (frame_s) => {
      if (paused) return
      const passed_s = Math.min(LONGEST_FRAME_S, frame_s)
      for (const lever of leverNames) {
        if (held[lever] !== 0) setLever(lever, positions[lever] + held[lever] * leverSharePerS[lever] * passed_s)
      }
      owed_s += passed_s
      while (owed_s >= STEP_S && !drill.isOver) {
        advanceDrill(drill)
        owed_s -= STEP_S
      }
    },
  }
}
