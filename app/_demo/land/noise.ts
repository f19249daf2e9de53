import { uniform } from '@/lib/random'
import { DEMO_SEED } from '../frame'

/** What a draw is for: one number a purpose, so that no two share a sequence. */
export const purpose = {
  hills: 1, ridges: 2, meander: 3, woods: 4, knolls: 5, houses: 10, farms: 11, fields: 12, streets: 13, shore: 14,
} as const

const eased = (t: number): number => t * t * t * (t * (t * 6 - 15) + 10)

const lattice = (use: number, i: number, j: number): number => uniform(DEMO_SEED, i + 4096 * (j + 2048), use, 0) * 2 - 1

/** Smooth value noise in [−1, 1] whose features are about `size` metres across. */
export function noise(use: number, x: number, y: number, size: number): number {
  const [u, v] = [x / size, y / size]
  const [i, j] = [Math.floor(u), Math.floor(v)]
  const [s, t] = [eased(u - i), eased(v - j)]
  const low = lattice(use, i, j) * (1 - s) + lattice(use, i + 1, j) * s
  const high = lattice(use, i, j + 1) * (1 - s) + lattice(use, i + 1, j + 1) * s
  return low * (1 - t) + high * t
}

/** Noise with three finer octaves over it, about [−1, 1]. */
export function roughNoise(use: number, x: number, y: number, size: number): number {
  let sum = 0
  for (let octave = 0, share = 0.53; octave < 4; octave++, share /= 2) sum += share * noise(use, x + octave * 511, y - octave * 377, size / 2 ** octave)
  return sum
}

/** A draw in [0, 1) for the nth choice of one thing. */
export const chance = (use: number, entity: number, count = 0): number => uniform(DEMO_SEED, entity, use, count + 1)
