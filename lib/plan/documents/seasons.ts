/** Levels a plan may count on: the usual season's, a dry season's, those of the drought it is planned for. */
export const seasons = ['usual', 'dry', 'drought'] as const

export type Season = (typeof seasons)[number]
