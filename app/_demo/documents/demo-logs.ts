import { idFromText } from '@/lib/field-log'
import type { Bundle, FieldLog, SiteEvent, SiteEventKind } from '@/lib/plan'
import { triangular, uniform } from '@/lib/random'
import { compileShuttle, recordShuttle, sustainableFlow, type PhaseName, type ShuttleRecord, type ShuttleSpec, type TenderSpec } from '@/lib/shuttle'
import { compilePlan } from '@/lib/supply'

export type DemoLog = { log: FieldLog; events: SiteEvent[] }

/** Saturday, 7 March 2026, 13:05 at a place that keeps UTC. */
const DISPATCHED_MS = Date.UTC(2026, 2, 7, 13, 5)
const SEED = 10
/** How long each drill was kept up. */
const LENGTH_S = 5400

/**
 * Two drills as they were written down, invented. What happened is the plan's shuttle run once more with trips, hands and
 * loads of its own; then it is seen by people: a button comes some seconds late, and on the second day much goes wrong.
 *
 * @param bundles the shipped plans with their ways, by the id of the plan
 */
export function demoLogs(bundles: ReadonlyMap<string, Bundle>): DemoLog[] {
  const clean = bundles.get('plan-gander-hill')
  const messy = bundles.get('plan-yarrow-bank')
  return [
    ...(clean ? [logOf(clean, 'log-gander-hill', 'Drill at the farmhouse on Gander Hill', 1, (seen) => seen)] : []),
    ...(messy ? [logOf(messy, 'log-yarrow-bank', 'Drill at Yarrow Bank, noted badly', 2, spoiled)] : []),
  ]
}

type Seen = Omit<SiteEvent, 'id' | 'logId' | 'device' | 'at_ms' | 'entered'> & { at_s: number; device?: string; entered?: SiteEvent['entered'] }

function logOf(bundle: Bundle, id: string, name: string, day: number, tell: (seen: Seen[], day: number, logId: string) => Seen[]): DemoLog {
  const { spec } = compilePlan(bundle)
  if (!spec) throw new RangeError(`${id}: the plan of the demo cannot be run`)
  const record = recordShuttle(compileShuttle(throttled(asItWas(spec, day))))
  const seen = [...fromTenders(record, spec), ...fromReadings(record, spec)].filter(({ at_s }) => at_s <= LENGTH_S).sort((a, b) => a.at_s - b.at_s)
  const { demand, criterion } = bundle.plan
  const needed_gpm = demand && demand.length > 0 ? Math.max(...demand.map(({ flow_gpm }) => flow_gpm)) : undefined
  const log: FieldLog = {
    format: 'millrace-log', version: 1, id, name, districtId: bundle.district.id, planId: bundle.plan.id, planned: bundle, date: '2026-03-07', zone: 'UTC',
    dispatched_ms: DISPATCHED_MS, ended_ms: DISPATCHED_MS + LENGTH_S * 1000, places: [], units: [],
    ...(criterion && { criterion }), ...(needed_gpm !== undefined && { needed_gpm }),
  }
  const events = tell(seen, day, id).map(({ at_s, device, entered = 'button', ...rest }, index): SiteEvent => ({
    id: idFromText(`${id} ${index}`), logId: id, device: device ?? deviceAt(rest.post, day), at_ms: DISPATCHED_MS + Math.round((at_s + hand_s(day, index)) * 1000), entered, ...rest,
  }))
  return { log, events }
}

const deviceAt = ({ kind }: SiteEvent['post'], day: number): string => `${kind}-phone-${day}`

const [TRIPS, HANDS, LOST] = [1, 2, 3] as const

/** A button is pressed a little after the thing is seen. */
const hand_s = (day: number, index: number): number => triangular(uniform(SEED + day, index, HANDS, 0), 0, 3, 12)

/** The plan's numbers as they turned out that day: roads slower, hook-ups longer than planned, each tender in its own way. */
function asItWas(spec: ShuttleSpec, day: number): ShuttleSpec {
  const factor = (tender: number, purpose: number, low: number, high: number) => low + (high - low) * uniform(SEED + day, tender, TRIPS, purpose)
  const spread = { trip: { lowFactor: 0.9, modeFactor: 1, highFactor: 1.15 } }
  return {
    ...spec,
    seed: SEED + day,
    tenders: spec.tenders.map((tender, i): TenderSpec => {
      const road = factor(i, 0, 1, day === 1 ? 1.1 : 1.3)
      const { ways: _, ...rest } = tender
      return {
        ...rest, toFill_s: tender.toFill_s * road, toDump_s: tender.toDump_s * road, fillPosition_s: tender.fillPosition_s * factor(i, 1, 0.9, 1.5),
        ...(tender.arrive_s !== undefined && { arrive_s: tender.arrive_s + (day === 2 && i === 0 ? 420 : 0) }),
        spread: { toFill: spread, toDump: spread, fill: spread, dump: spread },
      }
    }),
  }
}

/** Whoever runs the attack takes what there is, not what was planned. */
function throttled(spec: ShuttleSpec): ShuttleSpec {
  const held_gpm = Math.floor(sustainableFlow(compileShuttle(spec)).flow_gpm / 10) * 10
  return { ...spec, demand: { ...spec.demand, stages: spec.demand.stages.map((stage) => ({ ...stage, flow_gpm: Math.min(stage.flow_gpm, held_gpm) })) } }
}

/** What the beginning of a phase looks like to whoever stands there; where it begins twice, the first. */
const LOOKS: Readonly<Partial<Record<PhaseName, { at: 'fill' | 'dump'; kind: SiteEventKind }>>> = {
  dumps: { at: 'dump', kind: 'dumping' },
  'clears-position': { at: 'dump', kind: 'empty' },
  fills: { at: 'fill', kind: 'filling' },
  'clears-bay': { at: 'fill', kind: 'full' },
}
/** Phases with which a stay begins. */
const ARRIVALS: readonly PhaseName[] = ['waits-to-dump', 'takes-position', 'waits-to-fill', 'takes-bay']

function fromTenders({ segments }: ShuttleRecord, spec: ShuttleSpec): Seen[] {
  return segments.flatMap((phases, tender) => {
    const apparatusId = spec.tenders[tender]?.id ?? ''
    let before: PhaseName | undefined
    return phases.flatMap(({ phase, from_s, to_s, siteId }): Seen[] => {
      const isFill = spec.fills.some(({ id }) => id === siteId)
      const post = { kind: isFill ? 'fill' as const : 'dump' as const, siteId }
      const see = (kind: SiteEventKind, at_s: number): Seen => ({ post, kind, apparatusId, at_s })
      const isStay = ARRIVALS.includes(phase) && !(before !== undefined && ARRIVALS.includes(before))
      const looks = LOOKS[phase]
      const seen = [
        ...(isStay ? [see('arrived', from_s)] : []),
        ...(looks && before !== phase ? [...(looks.kind === 'filling' ? [see('hookedUp', Math.max(0, from_s - 15))] : []), see(looks.kind, from_s)] : []),
        ...(phase === 'clears-position' || phase === 'clears-bay' ? [see('left', to_s)] : []),
      ]
      before = phase
      return seen
    })
  })
}

/** Levels and flow are read off every few minutes, to what a gauge or an eye can tell. */
function fromReadings({ levels, flow }: ShuttleRecord, spec: ShuttleSpec): Seen[] {
  const every = (step_s: number, from_s: number) => Array.from({ length: Math.ceil((LENGTH_S - from_s) / step_s) }, (_, i) => from_s + i * step_s)
  const flowAt = (at_s: number) => flow.findLast(({ from_s }) => from_s <= at_s)?.flow_gpm ?? 0
  const begun_s = flow.find(({ flow_gpm }) => flow_gpm > 0)?.from_s ?? 0
  return [
    ...every(180, begun_s + 20).map((at_s): Seen => ({ post: { kind: 'attack' }, kind: 'flow', at_s, value: Math.round(flowAt(at_s) / 10) * 10 })),
    ...spec.dumps.flatMap(({ id, capacity_gal }, d) => every(300, (levels[d]?.[1]?.time_s ?? 0) + 60).map((at_s): Seen => ({
      post: { kind: 'dump', siteId: id }, kind: 'tankLevel', at_s, value: Math.round((levelThen(levels[d] ?? [], at_s) / capacity_gal) * 8) * capacity_gal / 8,
    }))),
    ...spec.fills.map(({ id, ready_s }): Seen => ({ post: { kind: 'draft', siteId: id }, kind: 'primeGot', at_s: Math.max(0, ready_s - 15) })),
  ]
}

function levelThen(levels: readonly { time_s: number; level_gal: number }[], at_s: number): number {
  const after = levels.findIndex(({ time_s }) => time_s > at_s)
  const [low, high] = [levels[after - 1], levels[after]]
  if (!low || !high) return levels.at(-1)?.level_gal ?? 0
  return low.level_gal + ((high.level_gal - low.level_gal) * (at_s - low.time_s)) / Math.max(1, high.time_s - low.time_s)
}

const FORGOTTEN_S = 20
const FORGOTTEN = 'Noted late'
const isForgotten = ({ note }: Seen): boolean => note === FORGOTTEN

/** The phone at the dump site was so far ahead. */
const AHEAD_S = 437

/**
 * A day on which much goes wrong with the writing down: one event in nine is missed, some are pressed twice or noticed by two
 * phones, one stay is noted in the wrong order, one time is corrected, one press undone, a tender leaves part full, and the phone at the
 * dump site runs ahead.
 */
function spoiled(seen: Seen[], day: number, logId: string): Seen[] {
  const kept = seen.filter((_, index) => uniform(SEED + day, index, LOST, 0) >= 1 / 9)
  const out: Seen[] = []
  kept.forEach((one, index) => {
    const isDump = one.post.kind === 'dump'
    const at_s = one.at_s + (isDump ? AHEAD_S : 0)
    // Filling was forgotten and pressed after full.
    const full = index > 30 && one.kind === 'filling' && !out.some(isForgotten) ? kept.slice(index).find(({ kind, apparatusId }) => kind === 'full' && apparatusId === one.apparatusId) : undefined
    out.push({ ...one, at_s: full ? full.at_s + FORGOTTEN_S : at_s, ...(full && { note: FORGOTTEN }), ...(index === 25 && one.kind !== 'left' ? { note: 'Held by the train at the crossing' } : {}) })
    if (index % 17 === 5) out.push({ ...one, at_s: at_s + 6 })
    if (isDump && index % 23 === 7) out.push({ ...one, at_s: one.at_s + 2, device: `attack-phone-${day}` })
  })
  const idAt = (index: number) => idFromText(`${logId} ${index}`)
  const wrong = out.findIndex(({ kind }, index) => index > 30 && kind === 'arrived')
  const slip = out.findIndex(({ kind }, index) => index > 50 && kind === 'full')
  const part = out.findIndex(({ kind }, index) => index > 20 && kind === 'full')
  const partFull = out[part]
  if (partFull) out[part] = { ...partFull, value: 900, note: 'Sent off early, about 900 gal' }
  const [corrected, slipped] = [out[wrong], out[slip]]
  if (corrected) out.push({ ...corrected, at_s: corrected.at_s - 50, replaces: idAt(wrong), device: deviceAt(corrected.post, day) })
  if (slipped) {
    out.push({ ...slipped, at_s: slipped.at_s + 15, kind: 'empty' })
    out.push({ ...slipped, at_s: slipped.at_s + 15, kind: 'empty', retracts: idAt(out.length - 1), device: deviceAt(slipped.post, day) })
  }
  return out
}
