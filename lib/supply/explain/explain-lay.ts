import type { CompiledPlan } from '../compile-plan'
import type { ResolvedLay } from '../hose-lay/resolve-lays'
import type { Working } from '../working'
import { explainArrival } from './explain-time'
import { computed, worked, working } from './inputs'

/** What a hose lay brings, and from when; its pressures are worked out on its own page. */
export function explainLay(compiled: CompiledPlan, { lay, flow_gpm, start_s, setUp_s, ready_s }: ResolvedLay): Working {
  return working('hose-lay', 'flow_gpm', flow_gpm, 'relay worked out pumper by pumper', [
    ...lay.pumperIds.flatMap((id) => {
      const arrives = explainArrival(compiled, id, lay.id)
      return arrives ? [worked('pumperArrives_s', arrives)] : []
    }),
    computed('start_s', start_s),
    computed('laySetUp_s', setUp_s, 'laying and hook-up rates assumed'),
    computed('ready_s', ready_s),
  ])
}
