import { seasons, suctionSchema } from '@/lib/plan'
import type { SheetTrial } from '@/lib/supply'
import { suctionInOrder, type TrialAddress } from '../_links/sheet-address'

/** What a sheet's address says is tried on it; what is no number within its range, or no set-up, is left out. */
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
  const read = suctionSchema.safeParse(Object.fromEntries(suctionInOrder.flatMap((name, index) => {
    const part = parts[index] ?? ''
    return part === '' ? [] : [[name, index < 3 ? Number(part) : part]]
  })))
  return read.success ? read.data : undefined
}
