import type { ControlName } from '@/lib/priming/drill'

/** Controls that move on a scale, in the order they stand on the panel. */
export const leverNames = ['throttle', 'tankToPump', 'tankFill', 'intake', 'discharge'] as const satisfies readonly ControlName[]
export type LeverName = (typeof leverNames)[number]

/** Controls that are on or off. */
export const switchNames = ['primer', 'drain'] as const satisfies readonly ControlName[]
export type SwitchName = (typeof switchNames)[number]

/** Opening of a control from where its lever stands: the intake is geared, so that it opens slowly at first. */
export const openingFromLever = (control: ControlName, lever: number): number => (control === 'intake' ? lever ** 2 : lever)
export const leverFromOpening = (control: ControlName, opening: number): number => (control === 'intake' ? Math.sqrt(opening) : opening)

/** How far a lever moves each second a key or button is held. */
export const leverSharePerS: Readonly<Record<LeverName, number>> = { throttle: 0.35, tankToPump: 0.3, tankFill: 0.3, intake: 0.16, discharge: 0.25 }
/** One tap. */
export const LEVER_TAP_SHARE = 0.02
