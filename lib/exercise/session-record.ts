import type { LoggedEvent, PhaseSegment, ShuttleRecord, ShuttleRun } from '../shuttle'
import { recordOf, type Session } from './session'
import { shortfallOf, type Shortfall } from './shortfall'
import { joinedSteps, stepsWithin, type Step } from './step'

export type Level = { readonly time_s: number; readonly level_gal: number }

/** What was recorded of an exercise from dispatch to its clock, over all its facts. */
export type SessionRecord = {
  readonly clock_s: number
  readonly log: readonly LoggedEvent[]
  /** Every tender that was ever in it, in the order in which they came. */
  readonly tenders: readonly { readonly id: string; readonly segments: readonly PhaseSegment[] }[]
  /** A tank that tips falls at once: two points of one time. */
  readonly levels: readonly { readonly dumpSiteId: string; readonly points: readonly Level[] }[]
  readonly flow: readonly Step[]
  /** Asked for at the fire ground, from each moment on. */
  readonly asked: readonly Step[]
  /** Figures of the run as it stands, over the parts that are in it now. */
  readonly run: ShuttleRun
}

export type SessionFlows = Pick<SessionRecord, 'log' | 'asked' | 'flow'>

/** What the fire ground missed so far. Nobody is short before the first engine is there. */
export function sessionShortfall({ now, clock_s }: Session, { asked, flow }: Pick<SessionFlows, 'asked' | 'flow'>): Shortfall {
  return shortfallOf(asked, flow, Math.min(clock_s, now.scenario.demand.countFrom_s), clock_s)
}

type Piece = { readonly record: ShuttleRecord; readonly from_s: number; readonly to_s: number; readonly session: Session['now'] }

/**
 * What was recorded from dispatch to the clock.
 *
 * @throws RangeError if the session has not begun
 */
export function readSession(session: Session): SessionRecord {
  const pieces = piecesOf(session)
  const last = pieces.at(-1)
  if (!last) throw new RangeError('session has no stretch, must have begun')
  return {
    clock_s: session.clock_s,
    tenders: tenderLines(pieces),
    levels: tankLines(pieces),
    ...flowsOf(pieces),
    run: last.record.run,
  }
}

/** Of what `readSession` reads, what happened, what was asked for and what came. */
export const readFlows = (session: Session): SessionFlows => flowsOf(piecesOf(session))

const flowsOf = (pieces: readonly Piece[]): SessionFlows => ({
  log: pieces.flatMap(({ record }) => record.log),
  flow: joinedSteps(pieces.map(({ record }) => record.flow)),
  asked: joinedSteps(pieces.map(({ session: { scenario: { spec } }, from_s, to_s }) => stepsWithin(spec.demand.stages, from_s, to_s))),
})

const piecesOf = ({ past, now, clock_s }: Session): Piece[] => {
  const ends = [...past.map(({ stretch }) => stretch.from_s).slice(1), now.from_s]
  return [
    ...past.map(({ stretch, record }, k) => ({ record, from_s: stretch.from_s, to_s: ends[k] ?? clock_s, session: stretch })),
    { record: recordOf(now, clock_s), from_s: now.from_s, to_s: clock_s, session: now },
  ]
}

function tenderLines(pieces: readonly Piece[]): SessionRecord['tenders'] {
  const lines = new Map<string, PhaseSegment[]>()
  for (const { record, session: { scenario: { spec } } } of pieces) {
    spec.tenders.forEach(({ id }, i) => {
      const line = lines.get(id) ?? []
      for (const segment of record.segments[i] ?? []) addSegment(line, segment)
      lines.set(id, line)
    })
  }
  return [...lines].map(([id, segments]) => ({ id, segments }))
}

/** A stretch that ends in the middle of a drive is no end of the drive: its second half was recorded from its true beginning. */
function addSegment(line: PhaseSegment[], segment: PhaseSegment): void {
  const last = line.at(-1)
  if (last && last.phase === segment.phase && last.siteId === segment.siteId && segment.from_s <= last.to_s) last.to_s = segment.to_s
  else line.push({ ...segment, from_s: Math.max(segment.from_s, last?.to_s ?? segment.from_s) })
}

function tankLines(pieces: readonly Piece[]): SessionRecord['levels'] {
  const lines = new Map<string, Level[]>()
  for (const { record, session: { scenario: { spec } } } of pieces) {
    spec.dumps.forEach(({ id }, d) => {
      const line = lines.get(id) ?? []
      for (const point of record.levels[d] ?? []) line.push(point)
      lines.set(id, line)
    })
  }
  return [...lines].map(([dumpSiteId, points]) => ({ dumpSiteId, points }))
}
