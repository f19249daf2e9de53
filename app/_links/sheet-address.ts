import { seasons, suctionSchema } from '@/lib/plan'
import type { SheetTrial } from '@/lib/supply'

/** What a sheet's address may say after its question mark, beside pumper and plan: what is tried on it. */
export const trialNames = ['season', 'lift', 'altitude', 'barometer', 'water', 'pressure', 'suction'] as const
export type TrialAddress = Partial<Record<(typeof trialNames)[number], string>>

const inOrder = ['size_in', 'length_ft', 'lineCount', 'strainer', 'intake'] as const

/** What is tried on a sheet as words of an address, so that the card and the way back are for the same. */
export function trialToAddress({ season, lift_ft, altitude_ft, barometer_inHg, water_degF, netPressure_psi, suction }: SheetTrial): TrialAddress {
  const words = { season, lift: lift_ft, altitude: altitude_ft, barometer: barometer_inHg, water: water_degF, pressure: netPressure_psi, suction: suction && inOrder.map((part) => suction[part] ?? '').join('_') }
  return Object.fromEntries(Object.entries(words).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])))
}

/** The same read back; what is no number within its range, or no set-up, is left out. */
export function trialFromAddress(address: TrialAddress): SheetTrial {
  const found = {
    season: seasons.find((one) => one === address.season),
    lift_ft: numberIn(address.lift, -20, 60), altitude_ft: numberIn(address.altitude, 0, 15_000), barometer_inHg: numberIn(address.barometer, 25, 33),
    water_degF: numberIn(address.water, 32, 130), netPressure_psi: numberIn(address.pressure, 0, 400), suction: suctionIn(address.suction),
  }
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined)) as SheetTrial
}

function numberIn(text: string | undefined, min: number, max: number): number | undefined {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text)
  return value >= min && value <= max ? value : undefined
}

function suctionIn(text: string | undefined): SheetTrial['suction'] {
  if (text === undefined) return undefined
  const parts = text.split('_')
  const read = suctionSchema.safeParse(Object.fromEntries(inOrder.flatMap((name, index) => {
    const part = parts[index] ?? ''
    return part === '' ? [] : [[name, index < 3 ? Number(part) : part]]
  })))
  return read.success ? read.data : undefined
}
