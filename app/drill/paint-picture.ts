import { columnShare, tankShare, type Drill } from '@/lib/priming/drill'

/** Elements that are painted each frame, found once by their `data-part`. */
export type Parts = ReadonlyMap<string, Element>

export function findParts(root: Element): Parts {
  const parts = new Map<string, Element>()
  for (const element of root.querySelectorAll('[data-part]')) parts.set(element.getAttribute('data-part') ?? '', element)
  return parts
}

/** How far what flows has been drawn along its pipe; kept from frame to frame. */
export type Motion = { intake: number; hose: number; air: number; tankToPump: number; tankFill: number; discharge: number; turn_deg: number }
export const beginMotion = (): Motion => ({ intake: 0, hose: 0, air: 0, tankToPump: 0, tankFill: 0, discharge: 0, turn_deg: 0 })

const TANK = { y: 14, height: 54 } as const
const PUMP = { y: 94, height: 52 } as const
const SOURCE_TOP = 170
/** Units of the picture a second for each gpm. */
const PACE = 0.16
const MOST_PACE = 90

const set = (parts: Parts, part: string, name: string, value: string): void => {
  const element = parts.get(part)
  if (element && element.getAttribute(name) !== value) element.setAttribute(name, value)
}

const step = (flow_gpm: number, frame_s: number): number => Math.max(-MOST_PACE, Math.min(MOST_PACE, flow_gpm * PACE)) * frame_s

/** Dashes that move with the flow and are hidden without one. */
function paintFlow(parts: Parts, part: string, offset: number, flow_gpm: number): void {
  set(parts, part, 'opacity', Math.abs(flow_gpm) > 2 ? '1' : '0')
  // Half a unit is half a pixel on a phone: finer steps would only cost painting.
  set(parts, part, 'stroke-dashoffset', (-Math.round(offset * 2) / 2).toFixed(1))
}

/** As many bubbles as there is gas; touched only when their number changes. */
function showBubbles(parts: Parts, count: number): void {
  const bubbles = parts.get('bubbles')
  if (!bubbles || bubbles.getAttribute('data-count') === String(count)) return
  bubbles.setAttribute('data-count', String(count))
  for (let index = 0; index < bubbles.children.length; index++) bubbles.children[index]?.setAttribute('opacity', index < count ? '1' : '0')
}

/**
 * Paints the state of the drill into the picture.
 *
 * @param frame_s time since the last frame; 0 stands still, for those who asked for less motion
 */
export function paintPicture(parts: Parts, drill: Drill, motion: Motion, frame_s: number): void {
  const { state, rig, controls } = drill
  const tank = tankShare(rig, state)
  set(parts, 'tank', 'y', (TANK.y + TANK.height * (1 - tank)).toFixed(1))
  set(parts, 'tank', 'height', (TANK.height * tank).toFixed(1))
  set(parts, 'pump', 'y', (PUMP.y + PUMP.height * (state.gasShare > 0.2 ? state.gasShare : 0)).toFixed(1))
  showBubbles(parts, state.gasShare > 0.2 ? 0 : Math.round(state.gasShare * 110))
  set(parts, 'hose-water', 'stroke-dasharray', `${(columnShare(rig, state) * 100).toFixed(1)} 200`)
  set(parts, 'hose-air', 'opacity', Math.min(1, state.hoseTop_absolute_ft / rig.atmosphere_absolute_ft).toFixed(2))
  const drop = rig.source_sqft === undefined ? 0 : Math.min(24, (state.lift_ft - rig.lift_ft) * 14)
  set(parts, 'source', 'y', (SOURCE_TOP + drop).toFixed(1))
  set(parts, 'whirl', 'opacity', state.strainerAirShare > 0.005 ? '1' : '0')
  set(parts, 'overflow', 'opacity', tank > 0.999 && state.tankIn_gpm - state.tankOut_gpm > 2 ? '1' : '0')

  motion.hose += step(state.column_gpm, frame_s)
  motion.intake += step(state.intakeWater_gpm, frame_s)
  motion.air += Math.max(-40, Math.min(40, (state.pocketAir_ftGalPerMin / Math.max(1, state.eye_absolute_ft)) * 1.2)) * frame_s
  motion.tankToPump += step(state.tankOut_gpm, frame_s)
  motion.tankFill += step(state.tankIn_gpm, frame_s)
  motion.discharge += step(state.delivered_gpm, frame_s)
  motion.turn_deg = (motion.turn_deg + state.speedShare * 500 * frame_s) % 360
  paintFlow(parts, 'hose-flow', motion.hose, columnShare(rig, state) > 0.999 ? state.column_gpm : 0)
  paintFlow(parts, 'intake-flow', motion.intake, state.intakeWater_gpm)
  paintFlow(parts, 'tankToPump-flow', motion.tankToPump, state.tankOut_gpm)
  paintFlow(parts, 'tankFill-flow', motion.tankFill, state.tankIn_gpm)
  paintFlow(parts, 'discharge-flow', motion.discharge, state.delivered_gpm)
  set(parts, 'hose-air', 'stroke-dashoffset', (-Math.round(motion.air * 2) / 2).toFixed(1))
  set(parts, 'impeller', 'transform', `rotate(${(Math.round(motion.turn_deg / 4) * 4).toFixed(0)})`)
  for (const control of ['intake', 'tankToPump', 'tankFill', 'discharge'] as const) {
    // Across the pipe when shut, along it when open; the intake by its lever, as the hand sees it.
    const lever = control === 'intake' ? Math.sqrt(controls.intake) : controls[control]
    const along = parts.get(`${control}-gate`)?.getAttribute('data-upright') === 'true' ? 90 : 0
    set(parts, `${control}-gate`, 'transform', `rotate(${(along + 90 * (1 - lever)).toFixed(0)})`)
  }
}
