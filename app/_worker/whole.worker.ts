import { expose } from 'comlink'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan, type SupplyResult } from '@/lib/supply'

/** What the second worker offers: the whole answer, limiting link and all, of a plan whose ways are found. */
export type WholeService = { evaluate(bundle: Bundle): Promise<SupplyResult> }

const service: WholeService = { evaluate: async (bundle) => evaluatePlan(bundle) }

expose(service)
