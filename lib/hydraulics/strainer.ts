/** `barrel` is the strainer of the loss table. */
export type StrainerKind = 'barrel' | 'floating' | 'low-level'

/**
 * Loss beyond that of a barrel strainer, in velocity heads of the hose.
 *
 * No published table is at hand. A floating strainer turns the water once more, a low-level strainer draws it through a
 * narrow ring: one and one and a half velocity heads are assumed, to be replaced by a measurement.
 *
 * @source assumed; common practice ranks them so, no source for the numbers
 */
export const strainerExtraVelocityHeads: Readonly<Record<StrainerKind, number>> = {
  barrel: 0,
  floating: 1,
  'low-level': 1.5,
}
