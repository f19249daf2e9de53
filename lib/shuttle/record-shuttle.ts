import { SECONDS_PER_MINUTE } from '../units'
import { EVENT, eventKinds, type EventKind, type OnEvent } from './event'
import { PHASE, phaseNames, type PhaseName } from './phase'
import { readRun } from './read-run'
import { runTo, scenarioFor, type RunOptions } from './run-shuttle'
import type { ShuttleRun } from './shuttle-run'
import type { Scenario } from './scenario'
import { begin } from './start'
import { FIRE, type SimState } from './state'

export type LoggedEvent = {
  time_s: number
  kind: EventKind
  tenderId?: string
  /** Dump site, fill site, or hose lay. */
  siteId?: string
  /** Water aboard the tender, or in the site's tanks when no tender is meant. */
  water_gal?: number
  flow_gpm?: number
}

/** One stretch of a tender's line in the string chart. */
export type PhaseSegment = {
  phase: PhaseName
  from_s: number
  to_s: number
  /** Site it is at or drives to. */
  siteId: string
}

export type ShuttleRecord = {
  run: ShuttleRun
  log: LoggedEvent[]
  /** One list a tender, without gaps from its arrival to the end or its leaving. */
  segments: PhaseSegment[][]
  /** Level of each dump site's tanks: straight between the points. */
  levels: { time_s: number; level_gal: number }[][]
  /** The same of the tanks in front of those; empty for a dump site without any. */
  frontLevels: { time_s: number; level_gal: number }[][]
  /** Flow at the fire ground from each moment on. */
  flow: { from_s: number; flow_gpm: number }[]
}

export type Recorder = {
  onEvent: OnEvent
  /** What was recorded up to the state's clock. Moves the state's water up to it. */
  read: () => ShuttleRecord
}

/**
 * Records what happens to a state while it is advanced with `onEvent`; may begin in the middle of a run.
 */
export function startRecord(scenario: Scenario, state: SimState, demand?: RunOptions['demand']): Recorder {
  const { spec } = scenario
  const sites = [...spec.dumps, ...spec.fills].map(({ id }) => id)
  const log: LoggedEvent[] = []
  const segments: PhaseSegment[][] = spec.tenders.map(() => [])
  const levels = spec.dumps.map((_, d) => [{ time_s: state.clock_s[0]!, level_gal: levelAt(state, d) }])
  const frontLevels = spec.dumps.map(({ front }, d) => (front && demand !== 'open' ? [{ time_s: state.clock_s[0]!, level_gal: frontAt(state, d) }] : []))
  const flow = [{ from_s: state.clock_s[0]!, flow_gpm: state.fire[FIRE.flow_gpm]! }]
  const phases = Int32Array.from(state.phase)
  const places = Int32Array.from(state.place)
  const since_s = Float64Array.from(state.phaseSince_s)

  const noteSegments = (i: number): void => {
    if (state.phase[i] === phases[i] && state.phaseSince_s[i] === since_s[i]) return
    closeSegment(i, state.phaseSince_s[i]!)
    phases[i] = state.phase[i]!
    places[i] = state.place[i]!
    since_s[i] = state.phaseSince_s[i]!
  }
  const closeSegment = (i: number, to_s: number): void => {
    const phase = phases[i]!
    if (phase === PHASE.coming || phase === PHASE.gone || to_s <= since_s[i]!) return
    segments[i]!.push({ phase: phaseNames[phase]!, from_s: since_s[i]!, to_s, siteId: sites[places[i]!]! })
  }
  const noteLevel = (d: number): void => {
    const time_s = state.dumpSince_s[d]!
    notePoint(levels[d]!, time_s, state.level_gal[d]!)
    notePoint(frontLevels[d]!, time_s, state.front_gal[d]!)
  }
  const onEvent: OnEvent = (kind, time_s, tender, site) => {
    for (let i = 0; i < spec.tenders.length; i++) noteSegments(i)
    for (let d = 0; d < spec.dumps.length; d++) noteLevel(d)
    const name = eventKinds[kind]!
    if (kind === EVENT.flow) {
      const last = flow[flow.length - 1]!
      if (last.from_s === time_s) last.flow_gpm = state.fire[FIRE.flow_gpm]!
      else flow.push({ from_s: time_s, flow_gpm: state.fire[FIRE.flow_gpm]! })
      log.push({ time_s, kind: name, flow_gpm: state.fire[FIRE.flow_gpm]! })
      return
    }
    const event: LoggedEvent = { time_s, kind: name }
    if (tender >= 0) {
      event.tenderId = spec.tenders[tender]!.id
      event.water_gal = state.load_gal[tender]!
    }
    if (site >= 0) event.siteId = (roadEvents.has(kind) ? spec.lanes?.[site] : kind === EVENT['lay-flow'] ? spec.feeds?.[site] : isFillEvent(kind) ? spec.fills[site] : spec.dumps[site])!.id
    if (kind === EVENT['lay-flow']) event.flow_gpm = state.feed_gpm[site]!
    else if (site >= 0 && tender < 0) event.water_gal = isFillEvent(kind) ? state.source_gal[site]! : state.level_gal[site]!
    if (event.water_gal === Infinity) delete event.water_gal
    if (kind === EVENT.demand) event.flow_gpm = scenario.demand.flow_gpm[state.stage[0]!]!
    log.push(event)
  }
  return {
    onEvent,
    read: () => {
      const now_s = state.clock_s[0]!
      const run = readRun(scenario, state, demand)
      const closed = segments.map((list, i) => {
        noteSegments(i)
        const phase = phases[i]!
        const isOpen = phase !== PHASE.coming && phase !== PHASE.gone && now_s > since_s[i]!
        return isOpen ? [...list, { phase: phaseNames[phase]!, from_s: since_s[i]!, to_s: now_s, siteId: sites[places[i]!]! }] : [...list]
      })
      levels.forEach((_, d) => noteLevel(d))
      return { run, log: [...log], segments: closed, levels: levels.map(withoutMiddlePoints), frontLevels: frontLevels.map(withoutMiddlePoints), flow: [...flow] }
    },
  }
}

/** A named run with its log, the tenders' lines, the tanks' levels and the flow. */
export function recordShuttle(scenario: Scenario, options: RunOptions = {}): ShuttleRecord {
  const staged = scenarioFor(scenario, options)
  const state = begin(staged)
  const recorder = startRecord(staged, state, options.demand ?? 'planned')
  runTo(staged, state, recorder.onEvent)
  return recorder.read()
}

const fillEvents = new Set<number>([
  EVENT['fill-open'], EVENT['arrives-at-fill'], EVENT['takes-bay'], EVENT['starts-fill'], EVENT['tops-up'],
  EVENT['ends-fill'], EVENT['leaves-fill'], EVENT['source-empty'], EVENT['source-recovers'],
  EVENT['waits-in-bay'], EVENT['bay-opens'],
])
const roadEvents = new Set<number>([EVENT['waits-at-road'], EVENT['enters-one-lane'], EVENT['leaves-one-lane']])
const isFillEvent = (kind: number): boolean => fillEvents.has(kind)

/** Level of the tanks a dump site's pumper drafts from, at the clock of a state. */
export function levelAt(state: SimState, d: number): number {
  const since_min = (state.clock_s[0]! - state.dumpSince_s[d]!) / SECONDS_PER_MINUTE
  return state.level_gal[d]! + (state.enter_gpm[d]! - state.out_gpm[d]! - state.leak_gpm[d]!) * since_min
}

function frontAt(state: SimState, d: number): number {
  const since_min = (state.clock_s[0]! - state.dumpSince_s[d]!) / SECONDS_PER_MINUTE
  return state.front_gal[d]! + (state.in_gpm[d]! - state.enter_gpm[d]!) * since_min
}

function notePoint(points: { time_s: number; level_gal: number }[], time_s: number, level_gal: number): void {
  const last = points[points.length - 1]
  if (!last) return
  if (time_s > last.time_s) points.push({ time_s, level_gal })
  else last.level_gal = level_gal
}

function withoutMiddlePoints(points: readonly { time_s: number; level_gal: number }[]): { time_s: number; level_gal: number }[] {
  return points.filter((point, k) => {
    const before = points[k - 1]
    const after = points[k + 1]
    if (!before || !after) return true
    const along = (point.time_s - before.time_s) / (after.time_s - before.time_s)
    return Math.abs(before.level_gal + along * (after.level_gal - before.level_gal) - point.level_gal) > 1e-6
  })
}
