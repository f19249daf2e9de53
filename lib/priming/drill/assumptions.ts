/** What stands behind the model: law of nature, judgement of ours, common practice with no source, or left out. */
export type AssumptionKind = 'physics' | 'judgement' | 'common-practice' | 'left-out'

/** The model's assumptions, worded in the message files and explained in README.md. */
export const drillAssumptions = [
  { code: 'air-one-temperature', kind: 'physics' },
  { code: 'column-by-atmosphere', kind: 'physics' },
  { code: 'tank-line-square-root', kind: 'physics' },
  { code: 'valve-air-orifice', kind: 'physics' },
  { code: 'pump-affinity', kind: 'physics' },
  { code: 'casing-always-full', kind: 'physics' },
  { code: 'gas-lock-exponents', kind: 'judgement' },
  { code: 'cavitation-one-head', kind: 'judgement' },
  { code: 'valve-opening-squared', kind: 'judgement' },
  { code: 'primer-straight-line', kind: 'judgement' },
  { code: 'whirlpool-depth', kind: 'judgement' },
  { code: 'venting-time', kind: 'judgement' },
  { code: 'score-weights', kind: 'judgement' },
  { code: 'loop-150-psi', kind: 'common-practice' },
  { code: 'quarter-tank', kind: 'common-practice' },
  { code: 'order-of-valves', kind: 'common-practice' },
  { code: 'no-column-inertia', kind: 'left-out' },
  { code: 'no-fill-line-drain-back', kind: 'left-out' },
  { code: 'no-tank-warming', kind: 'left-out' },
  { code: 'no-governor-or-relief', kind: 'left-out' },
] as const satisfies readonly { code: string; kind: AssumptionKind }[]
