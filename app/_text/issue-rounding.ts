import type { QuantityFormat } from './format-quantity'

const given: QuantityFormat = { style: 'headline', toward: 'down' }
const asked: QuantityFormat = { style: 'headline', toward: 'up' }
const typed: QuantityFormat = {}

/** Values of every issue that were typed or are read from a table, by their name. */
const typedValues = new Set(['rated_gpm', 'rate_gpm', 'sourceRated_gpm', 'older_gpm', 'newer_gpm', 'inflow_gpm'])
/** Issues whose flows stand as typed: a test, or the flow at which a table holds. */
const typedFlows = new Set(['test-point-impossible', 'curve-points-rise', 'strainer-loss-assumed', 'intake-loss-unmeasured'])
/** Issues about what is asked for. */
const askedFlows = new Set(['methods-far-apart'])

/** Volumes that are missing or that must be there, worked out in a run. */
const askedVolumes = new Set(['short_gal', 'reserve_gal', 'limit_gal'])

/** Times at which something is there, and at which something ends, by their name. */
const from = new Set(['to_s', 'short_s', 'draftLost_s', 'pumping_s', 'sourceEmpty_s'])
const until = new Set(['from_s', 'empty_s', 'fuel_s', 'held_s'])

/** How a value of an issue is rounded: the rule of `format-figure.ts`, by the name of the value. */
export function issueRounding(key: string, code: string): QuantityFormat {
  if (key.endsWith('_gpm')) {
    if (typedValues.has(key) || typedFlows.has(code)) return typed
    return askedFlows.has(code) || key === 'wanted_gpm' || key === 'needed_gpm' ? asked : given
  }
  return from.has(key) || askedVolumes.has(key) ? asked : until.has(key) ? given : typed
}
