/** Levels this close are the same level: far above rounding, far below a drop. */
export const SAME_LEVEL_GAL = 1e-6
