import { hydrantAvailableFlow_gpm, pondLens_gal, streamFlow_gpm } from '../hydraulics'
import { issue, type Issue } from '../issue'
import type { Source } from '../plan'
import { takeKnown, type Ledger } from './ledger'
import { spreadByMark } from './spread'
import { SECONDS_PER_MINUTE } from '../units'
import { usualSeason, type SeasonDrop } from './season'

/** What a source holds above the strainer and what runs into it; absent: does not run out, or is not known. */
export type SourceWater = {
  readonly usable_gal?: number
  readonly inflow_gpm?: number
  readonly hydrant_gpm?: number
  /** How the volume was found. */
  readonly volumeFrom?: 'entered' | 'surface' | 'stream'
  readonly issues: readonly Issue[]
}

/**
 * Water of a source in a season.
 *
 *   V = entered volume − surface · drop, or surface · (usable depth − drop)
 *
 * An entered volume goes first; a stream flows by the float method; a pressure hydrant by its two-point flow test at 20 psi.
 *
 * @param drop fall of the surface, from `seasonDrop`; default none
 * @returns what is known; issues `season-strainer-bare`, `season-volume-usual`, and `source-volume-unknown` or `source-flow-unknown`
 *   where the water is counted as without end because nobody has said how much there is (warn)
 */
export function sourceWater(source: Source | undefined, drop: SeasonDrop = usualSeason): SourceWater {
  if (!source) return { issues: [] }
  if (source.kind === 'pressureHydrant') {
    const { static_psi, residual_psi, test_gpm } = source
    return static_psi !== undefined && residual_psi !== undefined && test_gpm !== undefined && test_gpm > 0 && static_psi > residual_psi
      ? { hydrant_gpm: hydrantAvailableFlow_gpm({ static_psi, residual_psi, flow_gpm: test_gpm }), issues: [] }
      : { issues: [] }
  }
  const inflow_gpm = source.inflow_gpm ?? findStreamFlow_gpm(source, drop.drop_ft)
  const volume = findVolume(source, drop)
  const isStream = volume === undefined && source.kind === 'stream' && inflow_gpm !== undefined
  return {
    ...(volume && { usable_gal: volume.usable_gal, volumeFrom: volume.from }),
    ...(isStream && { usable_gal: 0, volumeFrom: 'stream' as const }),
    ...(inflow_gpm !== undefined && { inflow_gpm }),
    issues: volume?.issues ?? (isStream ? [] : [unknownWater(source)]),
  }
}

/**
 * The most that can be drawn from a source without a stop for a time: all it holds spread over that time, and what runs in.
 *
 *   Q = min(flow, V / T + inflow)
 *
 * @param flow_gpm   asked for, 0 or more
 * @param duration_s T, above 0
 */
export function lastingFlow_gpm({ usable_gal, inflow_gpm = 0 }: Pick<SourceWater, 'usable_gal' | 'inflow_gpm'>, flow_gpm: number, duration_s: number): number {
  return usable_gal === undefined ? flow_gpm : Math.min(flow_gpm, (usable_gal * SECONDS_PER_MINUTE) / duration_s + inflow_gpm)
}

/** Water that nobody has measured is counted as without end; a lake seldom ends within a fire. */
const unknownWater = ({ id, kind }: Source): Issue => (kind === 'stream' ? issue('source-flow-unknown', 'warn', [id]) : issue('source-volume-unknown', kind === 'lake' ? 'note' : 'warn', [id]))

/** A source's water with what is doubted of it noted: what was not entered was worked out from other numbers. */
export function doubtedWater(ledger: Ledger, source: Source | undefined, water: SourceWater): SourceWater {
  if (!source) return water
  const doubted = (field: 'usable_gal' | 'inflow_gpm' | 'test_gpm', value: number | undefined) =>
    value === undefined ? undefined : takeKnown(ledger, source, field, value, source[field] === undefined ? spreadByMark.computed : undefined)
  const usable_gal = doubted('usable_gal', water.usable_gal)
  const inflow_gpm = doubted('inflow_gpm', water.inflow_gpm)
  const hydrant_gpm = doubted('test_gpm', water.hydrant_gpm)
  return { ...water, ...(usable_gal !== undefined && { usable_gal }), ...(inflow_gpm !== undefined && { inflow_gpm }), ...(hydrant_gpm !== undefined && { hydrant_gpm }) }
}

/**
 * Flow of a stream from its float test, at the level of the day or lower.
 *
 * A stream that stands lower is also slower: over a wide bed the speed goes with depth^(2/3) (Manning's formula, same slope).
 *
 * @param drop_ft below the level of the test, 0 or more
 * @returns undefined where the test is not complete; 0 where the fall leaves no depth
 * @source streamFlow_gpm; Manning's formula for a wide channel (textbook form)
 */
export function findStreamFlow_gpm({ kind, streamWidth_ft, streamDepth_ft, floatReach_ft, float_s }: Source, drop_ft = 0): number | undefined {
  if (kind !== 'stream' || !streamWidth_ft || !streamDepth_ft || !floatReach_ft || !float_s) return undefined
  const depth_ft = streamDepth_ft - drop_ft
  if (depth_ft <= 0) return 0
  return streamFlow_gpm(streamWidth_ft, depth_ft, (floatReach_ft / float_s) * (depth_ft / streamDepth_ft) ** (2 / 3))
}

type Volume = { readonly usable_gal: number; readonly from: 'entered' | 'surface'; readonly issues: readonly Issue[] }

function findVolume(source: Source, { drop_ft }: SeasonDrop): Volume | undefined {
  const { surface_sqft, usableDepth_ft, usable_gal: entered_gal } = source
  if (entered_gal !== undefined) {
    const lost_gal = surface_sqft === undefined ? 0 : pondLens_gal(surface_sqft, drop_ft)
    const usable_gal = Math.max(0, entered_gal - lost_gal)
    const issues = drop_ft > 0 && surface_sqft === undefined ? [issue('season-volume-usual', 'warn', [source.id], { drop_ft })] : bare(source, usable_gal, drop_ft)
    return { usable_gal, from: 'entered', issues }
  }
  if (surface_sqft === undefined || usableDepth_ft === undefined) return undefined
  const usable_gal = pondLens_gal(surface_sqft, Math.max(0, usableDepth_ft - drop_ft))
  return { usable_gal, from: 'surface', issues: bare(source, usable_gal, drop_ft) }
}

const bare = ({ id }: Source, usable_gal: number, drop_ft: number): Issue[] =>
  usable_gal <= 0 && drop_ft > 0 ? [issue('season-strainer-bare', 'warn', [id], { drop_ft })] : []
