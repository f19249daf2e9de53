import { intakeGauge, tankShare, type Drill } from '@/lib/priming/drill'
import { formatQuantity, formatShare, say, type UnitSystem } from '../_text'
import '../_text/areas/drill'

/** What the intake gauge says, in words and the units in use. */
export function intakeWords(drill: Drill, system: UnitSystem): string {
  const gauge = intakeGauge(drill.rig, drill.state)
  if (Math.abs(gauge) < 0.25) return say('drill.gauge.zero')
  return gauge < 0
    ? say('drill.gauge.vacuum', { value: formatQuantity(-gauge, 'inHg', system, { digits: 0 }) })
    : say('drill.gauge.pressure', { value: formatQuantity(gauge, 'psi', system) })
}

export const dischargeWords = (drill: Drill, system: UnitSystem): string => formatQuantity(drill.state.dischargePressure_psi, 'psi', system, { digits: 0 })

/** Engine speed on a scale that begins where the engine idles: "idle", "40%", "full". */
export function speedWords(drill: Pick<Drill, 'rig' | 'state'>): string {
  const { idleShare } = drill.rig
  const percent = Math.round(((drill.state.speedShare - idleShare) / (1 - idleShare)) * 100)
  if (percent <= 0) return say('drill.gauge.idle')
  return percent >= 100 ? say('drill.gauge.full') : formatShare(percent / 100)
}

export const tankWords = (drill: Drill): string => formatShare(Math.round(tankShare(drill.rig, drill.state) * 100) / 100)

/** The gauges in a sentence, for those who hear them. */
export const heardGauges = (drill: Drill, system: UnitSystem): string =>
  say('drill.heard', { intake: intakeWords(drill, system), discharge: dischargeWords(drill, system), tank: tankWords(drill) })

type Heard = { at_s: number; intake: number; discharge: number; tank: number }
/** Least time between two readings aloud, and what has to move for one. */
const QUIET_S = 4
const INTAKE_STEP = 2
const DISCHARGE_STEP_PSI = 15
const TANK_STEP_SHARE = 0.1

/** Decides when the gauges have moved enough to be worth hearing, and not too often. */
export function createListener(): (drill: Drill) => boolean {
  let last: Heard | undefined
  return (drill) => {
    const now: Heard = { at_s: drill.state.time_s, intake: intakeGauge(drill.rig, drill.state), discharge: drill.state.dischargePressure_psi, tank: tankShare(drill.rig, drill.state) }
    if (last && now.at_s - last.at_s < QUIET_S) return false
    const isNews = !last || Math.abs(now.intake - last.intake) > INTAKE_STEP || Math.abs(now.discharge - last.discharge) > DISCHARGE_STEP_PSI ||
      Math.abs(now.tank - last.tank) > TANK_STEP_SHARE
    if (isNews) last = now
    return isNews
  }
}
