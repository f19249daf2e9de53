/** From one moment to another, after dispatch. */
export type Range = { readonly from_s: number; readonly to_s: number }

/** The range, or none at all (from and to alike) where its end would lie before its beginning. */
export const lawfulRange = (from_s: number, to_s: number): Range => ({ from_s, to_s: Math.max(from_s, to_s) })
