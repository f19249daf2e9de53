/** Hose lays of a plan: from the documents and the heights under them to what they carry. */
export { answerLay, type HoseLayAnswer, type LayPumper, type LayStop } from './answer-lay'
export { compileLay, type CompiledLay } from './compile-lay'
export { isHoseLacking, type HoseNeed } from './hose-needed'
export { layGround, wayDistances_ft, type LayGround, type LayHeights } from './lay-ground'
export { findLayHeights, layHeightsKey, type LayPlaces } from './lay-key'
export { findOwnSupply, layStops, type ResolvedLay } from './resolve-lays'
export { crossingsOf, layFlow, type LayFlow } from './lay-flow'
export { coefficientOfSize, hoseOfSize, layHose, type LaidStretch } from './lay-hose'
