import type { SheetTrial } from '@/lib/supply'

/** What a sheet's address may say after its question mark, beside pumper and plan: what is tried on it. */
export const trialNames = ['season', 'lift', 'altitude', 'barometer', 'water', 'pressure', 'suction'] as const
export type TrialAddress = Partial<Record<(typeof trialNames)[number], string>>

/** The parts of a suction set-up as they follow each other in an address. */
export const suctionInOrder = ['size_in', 'length_ft', 'lineCount', 'strainer', 'intake'] as const

/** What is tried on a sheet as words of an address, so that the card and the way back are for the same. */
export function trialToAddress({ season, lift_ft, altitude_ft, barometer_inHg, water_degF, netPressure_psi, suction }: SheetTrial): TrialAddress {
  const words = { season, lift: lift_ft, altitude: altitude_ft, barometer: barometer_inHg, water: water_degF, pressure: netPressure_psi, suction: suction && suctionInOrder.map((part) => suction[part] ?? '').join('_') }
  return Object.fromEntries(Object.entries(words).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])))
}
