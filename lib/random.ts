/**
 * Chance by address: a draw depends on (seed, entity, purpose, count) and on nothing
 * that was drawn before, so a branch of a run repeats what it did not change and two
 * variants of a plan meet the same nights. Integer operations and one division only,
 * so a browser and Node agree to the bit.
 */

/** 32-bit finaliser with full avalanche (public-domain constants by Chris Wellons, "lowbias32"). */
function mix(x: number): number {
  x ^= x >>> 16
  x = Math.imul(x, 0x7feb352d)
  x ^= x >>> 15
  x = Math.imul(x, 0x846ca68b)
  return (x ^ (x >>> 16)) >>> 0
}

/**
 * Uniform draw in [0, 1).
 *
 * @param seed    of the run, integer
 * @param entity  index of the thing drawn for, integer
 * @param purpose what the draw is for, integer; one number a purpose, listed by its user
 * @param count   how many draws this entity has made for this purpose, integer
 */
export function uniform(seed: number, entity: number, purpose: number, count: number): number {
  let h = mix(seed ^ 0x9e3779b9)
  h = mix(h ^ Math.imul(entity + 1, 0x85ebca6b))
  h = mix(h ^ Math.imul(purpose + 1, 0xc2b2ae35))
  h = mix(h ^ Math.imul(count + 1, 0x27d4eb2f))
  return h / 4294967296
}

/**
 * Triangular draw on [low, high] with the given mode, by the inverse distribution function.
 * Square root is exact in IEEE 754, so the draw is the same everywhere.
 *
 * @param u uniform draw in [0, 1)
 */
export function triangular(u: number, low: number, mode: number, high: number): number {
  if (high <= low) return mode
  const rising = (mode - low) / (high - low)
  return u < rising ? low + Math.sqrt(u * (high - low) * (mode - low)) : high - Math.sqrt((1 - u) * (high - low) * (high - mode))
}
