import { draftCapacity } from '../../hydraulics'
import { issue, type Issue } from '../../issue'
import type { Bundle, Lay } from '../../plan'
import { bestArrangement, compileRelay, relayResult, setUpTime, type CompiledRelay, type RelayResult, type RelaySpec, type SetUpTime } from '../../relay'
import { defaults } from '../defaults'
import { take } from '../ledger'
import { compileLay, type CompiledLay } from './compile-lay'
import { hoseNeeded, type HoseNeeds } from './hose-needed'
import type { LayPlaces } from './lay-key'

/** What a lay carries and how long it takes to stand, without tables and orders of work. */
export type LayFlow = {
  readonly compiled: CompiledLay
  /** Absent where an issue blocks. */
  readonly found?: {
    readonly relay: CompiledRelay
    readonly result: RelayResult
    readonly most_gpm: number
    /** Its hose against what there is. */
    readonly needed: HoseNeeds
    /** The most it carries if the far end stands higher by the doubt of the heights. */
    readonly doubted?: { readonly more_ft: number; readonly most_gpm: number }
    /** Absent where nothing flows. */
    readonly time?: SetUpTime
  }
}

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Solves a lay: compileLay, the largest flow or the one wanted, its set-up time, its hose against what there is, and the flow if the heights are off. */
export function layFlow(docs: Docs, lay: Lay, places?: LayPlaces): LayFlow {
  const compiled = compileLay(docs, lay, places)
  const { spec, hose, ground, ledger, sourceReady_s } = compiled
  if (!spec || !hose) return { compiled }
  const relay = compileRelay(spec)
  const most_gpm = bestArrangement(relay).flow_gpm
  const result = relayResult(relay, lay.wanted_gpm === undefined ? {} : { wanted_gpm: lay.wanted_gpm })
  const doubted = doubtedRise(spec, ground.doubt_ft)
  const crewCount = take(ledger, lay, 'crewCount', lay.crewCount, defaults.layCrewCount)
  return {
    compiled,
    found: {
      relay, result, most_gpm, needed: hoseNeeded(docs, lay, hose.stretches), ...(doubted && { doubted }),
      ...(result.flow_gpm > 0 && {
        time: setUpTime({
          lay: spec.lay, isByHand: hose.stretches.map(({ isByHand }) => isByHand), crewCount, pumperCount: result.pumpers.length, sourceReady_s,
          flow_gpm: result.flow_gpm, crossings: crossingsOf(lay), ...(lay.bedCount !== undefined && { bedCount: lay.bedCount }),
        }),
      }),
    },
  }
}

/** Road crossings of a lay by what they take. */
export function crossingsOf({ crossings = [] }: Pick<Lay, 'crossings'>): { readonly bridgeCount: number; readonly rampCount: number } {
  const count = (kind: string) => crossings.filter(({ protection = 'bridge' }) => protection === kind).length
  return { bridgeCount: count('bridge'), rampCount: count('ramp') }
}

/** What the doubt of the heights takes off the flow, said of the lay. */
export const riseDoubt = (layId: string, rise_ft: number, { more_ft, most_gpm }: { readonly more_ft: number; readonly most_gpm: number }) =>
  issue('lay-rise-doubt', 'note', [layId], { rise_ft, doubt_ft: more_ft, most_gpm })

/** What drafting says of the source pumper at its pressure, near cavitation among it; the relay has counted its limit already. */
export function draftIssues({ draft, lay }: CompiledLay, { pumpers }: Pick<RelayResult, 'pumpers'>): Issue[] {
  const [sourceId] = lay.pumperIds
  const discharge_psi = pumpers[0]?.discharge_psi
  if (!draft || discharge_psi === undefined || sourceId === undefined) return []
  return draftCapacity({ ...draft, ask: { discharge_psi: Math.max(0, discharge_psi) } }).issues
    .filter(({ code }) => code !== 'net-pressure-beyond-curve').map((one) => ({ ...one, subjectIds: [lay.id, sourceId] }))
}

/** The most with the far end higher by the doubt, all ground between in proportion. */
function doubtedRise(spec: RelaySpec, doubt_ft: number | undefined): { more_ft: number; most_gpm: number } | undefined {
  const far_ft = spec.profile[spec.profile.length - 1]?.distance_ft ?? 0
  if (doubt_ft === undefined || doubt_ft <= 0 || far_ft <= 0) return undefined
  const profile = spec.profile.map(({ distance_ft, height_ft }) => ({ distance_ft, height_ft: height_ft + (doubt_ft * distance_ft) / far_ft }))
  return { more_ft: doubt_ft, most_gpm: bestArrangement(compileRelay({ ...spec, profile })).flow_gpm }
}
