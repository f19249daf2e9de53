/** The hauled-water forms of the handbooks beside the simulation, and what a rating bureau or the officer asks. */
export { annexRound, ratingRound, type HandbookRound, type RoundInputs } from './handbook-round'
export type { SimulatedRound } from './simulated-round'
export {
  compareHandbook, comparisonSteps, type ComparisonStep, type HandbookComparison, type TenderComparison,
} from './compare-handbook'
export { roundNotes, type PartCode, type RoundNote, type RoundPart } from './round-differences'
export { creditCheck, type Compared, type CreditCheck, type CreditOptions } from './credit-check'
export { creditLines, creditRules, type CreditLine, type CreditLineCode, type Verdict } from './credit-rules'
export { checkCriterion, type CriterionAnswer } from './check-criterion'
export { holdFlow, type AskedFlow, type HeldAsk, type ShortCause } from './hold-flow'
