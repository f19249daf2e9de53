import { flowDoubt, prepareDoubt } from '@/lib/doubt'
import { readBundle, type Bundle } from '@/lib/plan'
import { compileShuttle, recordShuttle } from '@/lib/shuttle'
import { compareHandbook, compilePlan, evaluateCompiled } from '@/lib/supply'

/** All that an answer is made of, as text: its figures, every tender's line, the nights and what they rank first. */
export function wholeAnswer(json: unknown): string {
  const compiled = compilePlan(readBundle(json) as Bundle)
  const model = prepareDoubt(compiled)
  if (!model) throw new RangeError('the plan is blocked, must have an answer')
  return JSON.stringify({
    result: evaluateCompiled(compiled), handbook: compareHandbook(compiled),
    record: recordShuttle(compileShuttle(model.spec)), nights: flowDoubt(model, { nightCount: 100 }),
  })
}
