/** From a bundle to its answer: resolve, compile, evaluate, explain. */
export { compilePlan, type CompiledPlan } from './compile-plan'
export { defaults, type Default, type DefaultName } from './defaults'
export { findBuilding, findHazardFlow_gpm, findNeededFlow } from './demand'
export { evaluateCompiled, evaluatePlan, type EvaluateOptions } from './evaluate-plan'
export { FIRE_GROUND, findLegNote, findPlace, legKey, legUses, resolveLegs, sitesOfTask, wayOf, type LegUse, type Load, type Way } from './legs'
export { explain, explainedFigures } from './explain/explain'
export * from './result'
export { isWorking, type Working, type WorkingInput, type WorkingSource } from './working'
