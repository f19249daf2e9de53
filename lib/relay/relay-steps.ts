import type { RelayMode } from './spec'
import type { RelayResult } from './relay-result'

/** What is done, in words of the message files. */
export type RelayStepCode =
  | 'lay-hose' | 'open-ready' | 'draft' | 'send-water' | 'vent-air' | 'take-water' | 'set-relief' | 'throttle-up' | 'hold' | 'call-flow'
  | 'attack-eases' | 'throttle-down' | 'vent-left' | 'source-stops' | 'drain'

/** One step of starting or shutting down, in order; the pressure it ends at where it has one. */
export type RelayStep = { readonly code: RelayStepCode; readonly pumperId?: string; readonly psi?: number; readonly gpm?: number }

/**
 * Order in which a relay is started: from the source towards the fire, each pumper letting the air out and taking the
 * water in before it raises its pressure.
 *
 * @param result of planRelay
 * @source own; common practice; shut-down order after training slides (seen)
 */
export function startSteps({ pumpers, flow_gpm }: RelayResult, mode: RelayMode): RelayStep[] {
  const steps: RelayStep[] = pumpers.length > 0 ? [{ code: 'lay-hose' }] : []
  for (const { id, isSource, discharge_psi } of pumpers) {
    if (isSource) {
      steps.push({ code: 'draft', pumperId: id })
      for (const other of pumpers) if (!other.isSource) steps.push({ code: mode === 'closed' ? 'open-ready' : 'draft', pumperId: other.id })
      if (mode === 'closed') for (const other of pumpers) if (other.intakeRelief_psi !== undefined) steps.push({ code: 'set-relief', pumperId: other.id, psi: other.intakeRelief_psi })
      steps.push({ code: 'send-water', pumperId: id, psi: discharge_psi })
      continue
    }
    if (mode === 'closed') steps.push({ code: 'vent-air', pumperId: id }, { code: 'take-water', pumperId: id })
    steps.push({ code: 'throttle-up', pumperId: id, psi: discharge_psi })
  }
  const source = pumpers[0]
  if (source) steps.push({ code: 'call-flow', gpm: flow_gpm }, { code: 'hold' })
  return steps
}

/**
 * Order in which a relay is shut down: the attack pumper first, then back towards the source, so that no pumper runs dry
 * and no pressure is shut in behind it.
 *
 * @source shut-down order, training slides (seen)
 */
export function stopSteps({ pumpers }: RelayResult, mode: RelayMode): RelayStep[] {
  const steps: RelayStep[] = pumpers.length > 0 ? [{ code: 'attack-eases' }] : []
  for (const { id, isSource } of [...pumpers].reverse()) {
    steps.push({ code: 'throttle-down', pumperId: id })
    if (!isSource && mode === 'closed') steps.push({ code: 'vent-left', pumperId: id })
    if (isSource) steps.push({ code: 'source-stops', pumperId: id }, { code: 'drain' })
  }
  return steps
}
