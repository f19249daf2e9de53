import type { DeviceClock } from '@/lib/field-log'

/**
 * By how much times noted by a device are put right to stand beside another's clock, as whoever holds that one reads the time [ms].
 *
 * @param here device whose clock counts; one without a clock in the log: the common one
 * @returns 0 for a device that nothing ties to the others
 */
export function shiftsFrom(clocks: readonly DeviceClock[], here: string): (device: string) => number {
  const shift_ms = new Map(clocks.flatMap(({ device, basis, shift_s }) => (basis === 'unlinked' ? [] : [[device, Math.round(shift_s * 1000)] as const])))
  const own_ms = shift_ms.get(here) ?? 0
  return (device) => {
    const found_ms = shift_ms.get(device)
    return found_ms === undefined ? 0 : found_ms - own_ms
  }
}
