/** Hose lays of a plan: from the documents and the heights under them to what they carry. */
export { answerLay, type HoseLayAnswer, type LayPumper, type LayStop } from './answer-lay'
export { isHoseLacking, type HoseNeed } from './hose-needed'
export { layGround, wayDistances_ft } from './lay-ground'
export { layHeightsKey } from './lay-key'
export { findOwnSupply, layStops, type ResolvedLay } from './resolve-lays'
export { crossingsOf, layFlow } from './lay-flow'
export { sourceOfLay } from './source-of-lay'
export { coefficientOfSize, hoseOfSize, type LaidStretch } from './lay-hose'
