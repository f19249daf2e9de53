/** Between a number and its unit, so that a line never breaks there. */
export const UNIT_SPACE = '\u00a0'
