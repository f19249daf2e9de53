import fc from 'fast-check'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** The numbers of the drill's model that are judgement, over the range each may lie in. */
export const judgement = fc.record({
  gasLockShare: between(0.08, 0.11),
  headExponent: between(4, 8),
  carryExponent: between(6, 10),
  bindFactor: between(0.95, 1.1),
  gripFactor: between(0.15, 0.4),
  boundHeadShare: between(0.05, 0.15),
  vent_s: between(4, 15),
  airEaseFactor: between(10, 28),
  intake_gpmPerSqrtFt: between(500, 700),
  intake_sqft: between(0.1, 0.17),
  pump_gal: between(9, 16),
  flowLag_s: between(0.15, 0.4),
  speedLag_s: between(1, 2.5),
})
