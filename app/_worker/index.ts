/** What is worked out away from the page: imports, answers. */
export { importElevationFiles, type ElevationFilesOptions } from './elevation/import-elevation-files'
export type { ElevationImport, ElevationSummary } from './elevation/import-elevation'
export { importFile, type ImportFileOptions } from './import-file'
export type { DistrictImport, ImportSummary } from './import-roads'
export { getPlanner, Planner } from './planner'
export { useDoubt, type DoubtState } from './use-doubt'
export type { DragAnswer, PlanAnswer } from './planner-engine'
export { usePlanAnswer, type PlanAnswerState } from './use-plan-answer'
