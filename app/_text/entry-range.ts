import type { Unit } from '@/lib/units'

export type Range = { readonly min: number; readonly max: number }

/**
 * Widest values that a field of each unit takes unless it states its own: wide enough for any real
 * district, narrow enough that a slipped finger is noticed. Below zero only where a field asks for it.
 */
const ranges: Readonly<Record<Unit, Range>> = {
  gal: { min: 0, max: 10_000_000_000 },
  gpm: { min: 0, max: 20_000 },
  psi: { min: 0, max: 1000 },
  ft: { min: 0, max: 30_000 },
  in: { min: 0, max: 1200 },
  mi: { min: 0, max: 500 },
  mph: { min: 0, max: 120 },
  lb: { min: 0, max: 200_000 },
  inHg: { min: 0, max: 32 },
  degF: { min: -80, max: 150 },
  s: { min: 0, max: 172_800 },
  sqft: { min: 0, max: 10_000_000_000 },
  cuft: { min: 0, max: 10_000_000_000 },
}

export const defaultRange = (unit: Unit): Range => ranges[unit]
