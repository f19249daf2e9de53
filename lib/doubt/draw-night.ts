import { triangular, uniform } from '../random'
import { entityOf, type ShuttleSpec } from '../shuttle'
import type { DoubtModel } from './model'
import { PUMP } from './moves'
import { writableSpec } from './spec-numbers'

/** Purpose of chance of what lasts all night; those of single trips are the shuttle's own. */
const WHOLE_NIGHT = 200

/** One night: the plan's numbers as they are on it. */
export type Night = {
  readonly seed: number
  /** Written over by the next night drawn. */
  readonly spec: ShuttleSpec
  readonly pump_gpm: number
  /** Factor of each input, in the order of the model. */
  readonly factors: Float64Array
  /** Some input lies where the plan has no answer: a lift that no pump reaches. */
  readonly isBlocked: boolean
}

/** Seed of a night: neighbours share nothing, and a night is the same whoever draws it. */
const nightSeed = (seed: number, night: number): number => (Math.imul(seed, 0x9e3779b1) ^ Math.imul(night + 1, 0x85ebca6b)) | 0

/**
 * Draws nights of a model. Every input has its own address of chance, its key, so that a variant
 * of the plan meets the same night in all that it did not change; only + − × ÷ √ are used, so a
 * night is the same to the bit in any browser and in Node.
 *
 * A number moved by several inputs is its planned value times the ratio of each, read straight between
 * the knots; moments (ready, arrive) add what each input adds.
 *
 * @param seed whole number
 * @returns draws the night of an index, 0 and up; its spec is written over by the next
 */
export function nightDrawer(model: DoubtModel, seed: number): (night: number) => Night {
  const { spec, place } = writableSpec(model.spec)
  const entities = model.inputs.map(({ key }) => entityOf(key))
  const places = model.numbers.map(({ path }) => (path === PUMP ? undefined : place(path)))
  /** By number: what is added to it so far where it adds, else what it is multiplied by. */
  const scale = new Float64Array(model.numbers.length)
  const seedPlace = place('seed')
  return (night) => {
    const own = nightSeed(seed, night)
    const factors = new Float64Array(model.inputs.length)
    let isBlocked = false
    for (let n = 0; n < scale.length; n++) scale[n] = model.numbers[n]!.adds ? 0 : 1
    for (let i = 0; i < factors.length; i++) {
      const { spreadShare } = model.inputs[i]!
      const { knots, targets } = model.moves[i]!
      const factor = triangular(uniform(own, entities[i]!, WHOLE_NIGHT, 0), 1 - spreadShare, 1, 1 + spreadShare)
      factors[i] = factor
      if (factor < knots[0]! || factor > knots[knots.length - 1]!) {
        isBlocked = true
        continue
      }
      let k = 1
      while (k < knots.length - 1 && factor > knots[k]!) k++
      const along = (factor - knots[k - 1]!) / (knots[k]! - knots[k - 1]!)
      for (const { number, changes } of targets) {
        const change = changes[k - 1]! + along * (changes[k]! - changes[k - 1]!)
        scale[number] = model.numbers[number]!.adds ? scale[number]! + change : scale[number]! * change
      }
    }
    let pump_gpm = model.pump_gpm
    for (let n = 0; n < scale.length; n++) {
      const { planned, adds } = model.numbers[n]!
      const value = Math.max(0, adds ? planned + scale[n]! : planned * scale[n]!)
      const at = places[n]
      if (at) at.holder[at.name] = value
      else pump_gpm = value
    }
    seedPlace.holder[seedPlace.name] = own
    for (const dump of spec.dumps) if (dump.pumpReady_s < dump.ready_s) (dump as { pumpReady_s: number }).pumpReady_s = dump.ready_s
    return { seed: own, spec, pump_gpm, factors, isBlocked }
  }
}
