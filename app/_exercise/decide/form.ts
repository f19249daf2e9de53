import type { Change } from '@/lib/plan'
import type { Session } from '@/lib/exercise'
import type { NameOf } from '../../_text'
import type { Placing } from '../use-placing'
import type { usePlanDecision } from './use-plan-decision'

/** What every form of a decision is given; `done` empties the panel once it has taken effect. */
export type DecisionForm = Pick<ReturnType<typeof usePlanDecision>, 'decidePlan' | 'decideLay'> & {
  readonly session: Session
  readonly names: NameOf
  readonly by: string
  readonly isOff: boolean
  readonly placing: Placing | undefined
  readonly decide: (change: Change, by: string) => boolean
  readonly done: () => void
}
