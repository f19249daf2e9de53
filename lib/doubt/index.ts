/** How sure an answer is: its numbers doubted as their evidence says, night by night. */
export { doubtInputs, type DoubtInput } from './input'
export { prepareDoubt, type DoubtModel, type ModelOptions } from './model'
export { nightDrawer, nightSeed, type Night } from './draw-night'
export { nightFlow, type NightFlow } from './night-flow'
export { nightFlows_gpm } from './night-flows'
export { nightRun, type NightRun } from './night-run'
export { tripSpreadShare, withTripSpread } from './trip-spread'
export {
  dependableFlow, dependableFrom, DEPENDABLE_SHARE, LowestFlows, mattering, NIGHT_COUNT, rankOf, SEED, type DependableOptions,
} from './dependable'
export { quantile, shareError } from './quantile'
export { sampleNights, type NightSample } from './sample-nights'
export { doubtFrom, doubtOf, type Band, type DoubtAnswer } from './answer'
export { firstToMeasure, rankingOf, toldInputs, type RankedInput, type Ranking } from './ranking'
export { flowDoubt } from './flow-doubt'
export { explainedShares, type Explained } from './explained'
