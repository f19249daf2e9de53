/** Id under which the fire ground stands beside the sites of a plan. */
export const FIRE_GROUND = 'fireGround'
