import { useSyncExternalStore } from 'react'
import { z } from 'zod'
import { controlNames, createDrill, giveUpDrill, advanceDrill, getScenario, scriptHands, type Drill, type DrillPumper, type DrillSite, rigFrom } from '@/lib/priming/drill'
import { keptList } from '../_ui/kept-list'

/** Raised whenever the model answers the same moves differently: a run kept before cannot be played again. */
export const DRILL_MODEL = 1

const known = z.record(z.string(), z.union([z.number(), z.string()]).optional())
const keptRunSchema = z.object({
  id: z.string(), name: z.string().max(80), at: z.string(), model: z.number(), scenario: z.string(), pumper: known, site: known,
  moves: z.array(z.object({ at_s: z.number(), control: z.enum(controlNames), to: z.number() })), end_s: z.number(), gaveUp: z.boolean(), points: z.number(),
})

/** A run as it is kept: the moves, not the gauges; the model plays them again to the same end. */
export type KeptRun = z.infer<typeof keptRunSchema>

const none: readonly KeptRun[] = []
const kept = keptList<KeptRun>('millrace-drill-runs', { most: 60, findItem: (one) => keptRunSchema.safeParse(one).data })

/** Runs kept on this device, newest first; what cannot be read is passed over. The same list as long as nothing changed. */
export const readKeptRuns = kept.read
/** @returns whether the device kept them */
export const writeKeptRuns = kept.write

/** The kept runs, for a screen. */
export const useKeptRuns = (): readonly KeptRun[] => useSyncExternalStore(kept.listen, kept.read, () => none)

/** Plays a kept run again, or undefined if the model has changed since or its figures no longer stand. */
export function findRunAgain(run: KeptRun): Drill | undefined {
  if (run.model !== DRILL_MODEL) return undefined
  try {
    const drill = createDrill(rigFrom(run.pumper as DrillPumper, run.site as DrillSite), getScenario(run.scenario))
    const hands = scriptHands(run.moves)
    while (!drill.isOver && drill.state.time_s < run.end_s - 5e-7) {
      hands(drill.controls, drill.state)
      advanceDrill(drill)
    }
    if (run.gaveUp) giveUpDrill(drill)
    drill.isOver = true
    return drill
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}
