const EXERCISE = /^\/district\/[\w-]+\/exercise\/[\w-]+$/

/** The page of other devices, with the way back to an exercise. */
export const devicesHref = (back: string): string => `/devices?back=${encodeURIComponent(back)}`

/** The way back that an address names; undefined where it is none to an exercise of this station. */
export const backFrom = (back: string | undefined): string | undefined => (back !== undefined && EXERCISE.test(back) ? back : undefined)
