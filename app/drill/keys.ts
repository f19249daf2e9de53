import type { LeverName, SwitchName } from './lever'

/** Key above, key below, as they lie on the keyboard. */
export const leverKeys: Readonly<Record<LeverName, { readonly more: string; readonly less: string }>> = {
  throttle: { more: 'Q', less: 'A' },
  tankToPump: { more: 'W', less: 'S' },
  tankFill: { more: 'E', less: 'D' },
  intake: { more: 'R', less: 'F' },
  discharge: { more: 'T', less: 'G' },
}
export const switchKeys: Readonly<Record<SwitchName, string>> = { primer: 'Y', drain: 'X' }
export const PAUSE_KEY = 'Z'

/** Which lever a key moves, and which way. */
export function findLeverKey(key: string): { readonly lever: LeverName; readonly direction: 1 | -1 } | undefined {
  const typed = key.toUpperCase()
  for (const [lever, { more, less }] of Object.entries(leverKeys) as [LeverName, { more: string; less: string }][]) {
    if (typed === more) return { lever, direction: 1 }
    if (typed === less) return { lever, direction: -1 }
  }
  return undefined
}

export const findSwitchKey = (key: string): SwitchName | undefined =>
  (Object.entries(switchKeys) as [SwitchName, string][]).find(([, one]) => one === key.toUpperCase())?.[0]
