/** Relay or shuttle, or some of both: the best of each from the equipment at hand, and the distance at which they are even. */
export { breakEven, type BreakEven } from './break-even'
export { hoseOrWheels, type HoseOrWheels } from './compare'
export { equipmentOf, stretchesFor, supplyHose_ft } from './equipment'
export type { CarriageTrial } from './trial'
export { firstPart, type Candidate } from './variant'
