/** Nights in an answer unless asked otherwise: the standard error of a share of 90 % is then 1.5 %. */
export const NIGHT_COUNT = 400
/** Part of the nights in which the dependable flow is held. */
export const DEPENDABLE_SHARE = 0.9
/** Nights of an answer unless asked otherwise. */
export const SEED = 1
