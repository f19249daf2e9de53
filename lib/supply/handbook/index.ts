/** The hauled-water forms of the handbooks beside the simulation, and what a rating bureau or the officer asks. */
export { annexRound, ratingRound } from './handbook-round'
export { compareHandbook, type ComparisonStep, type HandbookComparison, type TenderComparison } from './compare-handbook'
export { creditCheck, type CreditCheck } from './credit-check'
export { creditLines, creditRules, type CreditLine, type CreditLineCode, type Verdict } from './credit-rules'
export { checkCriterion, type CriterionAnswer } from './check-criterion'
