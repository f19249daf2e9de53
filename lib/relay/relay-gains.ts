import { hoseCoefficient, defaultWorkingPressure_psi, type PumperHydraulics } from '../hydraulics'
import { bestArrangement, compileRelay } from './arrangement'
import type { HoseLine, RelaySpec } from './spec'

/** What could be a tenth better, or one more. */
export type RelayLink = 'source' | 'pumper' | 'hose-friction' | 'hose-pressure' | 'places' | 'more-pumpers' | 'more-lines'

/** How much more a relay carries with one thing better. */
export type RelayGain = { readonly link: RelayLink; readonly id?: string; readonly flow_gpm: number; readonly gain_gpm: number }

const BETTER = 1.1

/**
 * What holds a relay back: each part a tenth better, one at a time, and the relay worked out anew; also one more pumper like
 * the last at hand, a second line beside the hose, and pumpers wherever they serve best.
 *
 * Better means: pumps move a tenth more at each pressure; hose loses a tenth less; hose stands a tenth more pressure.
 *
 * @param spec as for planRelay
 * @returns by falling gain; no gain at all reads 0. A tenth of one thing and one more of another are not the same effort
 */
export function relayGains(spec: RelaySpec): RelayGain[] {
  const now_gpm = bestArrangement(compileRelay(spec)).flow_gpm
  const gains: RelayGain[] = []
  const tryWith = (link: RelayLink, changed: RelaySpec, id?: string) => {
    const { flow_gpm } = bestArrangement(compileRelay(changed))
    gains.push({ link, id, flow_gpm, gain_gpm: Math.max(0, flow_gpm - now_gpm) })
  }
  const { source, pumpers } = spec
  tryWith('source', { ...spec, source: source.kind === 'draft' ? { ...source, draft: { ...source.draft, pumper: stronger(source.draft.pumper) } } : { ...source, pumper: stronger(source.pumper) } }, source.id)
  for (const { id } of pumpers) tryWith('pumper', { ...spec, pumpers: pumpers.map((one) => (one.id === id ? { ...one, pumper: stronger(one.pumper), tankDraft: one.tankDraft && { ...one.tankDraft, pumper: stronger(one.tankDraft.pumper) } } : one)) }, id)
  const withLines = (change: (line: HoseLine) => HoseLine): RelaySpec => ({ ...spec, lay: spec.lay.map((segment) => ({ ...segment, lines: segment.lines.map(change) })) })
  tryWith('hose-friction', withLines((line) => ({ ...line, coefficient: (line.coefficient ?? hoseCoefficient(line.size_in).coefficient) / BETTER })))
  tryWith('hose-pressure', withLines((line) => ({ ...line, working_psi: (line.working_psi ?? defaultWorkingPressure_psi(line.size_in)) * BETTER })))
  tryWith('more-lines', { ...spec, lay: spec.lay.map((segment) => ({ ...segment, lines: [...segment.lines, ...segment.lines.slice(0, 1)] })) })
  if (spec.stations_ft) tryWith('places', { ...spec, stations_ft: undefined })
  const last = pumpers[pumpers.length - 1]
  if (pumpers.length < 12) tryWith('more-pumpers', { ...spec, pumpers: [...pumpers, last ? { ...last, id: `${last.id}+1` } : { id: `${source.id}+1`, pumper: source.kind === 'draft' ? source.draft.pumper : source.pumper }] })
  return gains.sort((a, b) => b.gain_gpm - a.gain_gpm)
}

/** A pump that moves a tenth more at each pressure, and through its suction. */
function stronger(pumper: PumperHydraulics): PumperHydraulics {
  return {
    ...pumper, rated_gpm: pumper.rated_gpm * BETTER,
    curvePoints: pumper.curvePoints?.map((point) => ({ ...point, flow_gpm: point.flow_gpm * BETTER })),
    testPoints: pumper.testPoints?.map((point) => ({ ...point, flow_gpm: point.flow_gpm * BETTER })),
  }
}
