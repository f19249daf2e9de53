import { useSyncExternalStore } from 'react'
import { z } from 'zod'
import { controlNames, createDrill, giveUpDrill, advanceDrill, getScenario, scriptHands, type Drill, type DrillPumper, type DrillSite, rigFrom } from '@/lib/priming/drill'

/** Raised whenever the model answers the same moves differently: a run kept before cannot be played again. */
export const DRILL_MODEL = 1
const STORE_KEY = 'millrace-drill-runs'
const MOST_RUNS = 60

const known = z.record(z.string(), z.union([z.number(), z.string()]).optional())
const keptRunSchema = z.object({
  id: z.string(), name: z.string().max(80), at: z.string(), model: z.number(), scenario: z.string(), pumper: known, site: known,
  moves: z.array(z.object({ at_s: z.number(), control: z.enum(controlNames), to: z.number() })), end_s: z.number(), gaveUp: z.boolean(), points: z.number(),
})

/** A run as it is kept: the moves, not the gauges; the model plays them again to the same end. */
export type KeptRun = z.infer<typeof keptRunSchema>

const none: readonly KeptRun[] = []
let lastText = ''
let lastRuns = none
const listeners = new Set<() => void>()

/** Runs kept on this device, newest first; what cannot be read is passed over. The same list as long as nothing changed. */
export function readKeptRuns(): readonly KeptRun[] {
  const text = readStore()
  if (text !== lastText) {
    lastText = text
    lastRuns = parseRuns(text)
  }
  return lastRuns
}

function readStore(): string {
  try {
    return localStorage.getItem(STORE_KEY) ?? ''
  } catch {
    // Storage is forbidden on this device: nothing is kept.
    return ''
  }
}

function parseRuns(text: string): readonly KeptRun[] {
  if (text === '') return none
  try {
    const listed: unknown = JSON.parse(text)
    return Array.isArray(listed) ? listed.flatMap((one) => { const read = keptRunSchema.safeParse(one); return read.success ? [read.data] : [] }) : none
  } catch {
    return none
  }
}

/** @returns whether the device kept them */
export function writeKeptRuns(runs: readonly KeptRun[]): boolean {
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify(runs.slice(0, MOST_RUNS)))
  } catch {
    return false
  }
  for (const listener of listeners) listener()
  return true
}

/** The kept runs, for a screen. */
export const useKeptRuns = (): readonly KeptRun[] => useSyncExternalStore(listen, readKeptRuns, () => none)

function listen(listener: () => void): () => void {
  listeners.add(listener)
  window.addEventListener('storage', listener)
  return () => {
    listeners.delete(listener)
    window.removeEventListener('storage', listener)
  }
}

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
