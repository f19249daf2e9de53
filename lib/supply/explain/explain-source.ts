import { HYDRANT_RESIDUAL_PSI, floatFactor, type Drawdown } from '../../hydraulics'
import type { Source } from '../../plan'
import { startLedger } from '../ledger'
import type { SeasonDrop } from '../season'
import type { SourceWater } from '../source'
import type { Working, WorkingInput } from '../working'
import { computed, given, worked, working } from './inputs'

const ledger = startLedger()

/** Fields of a source that have a figure, as inputs. */
const fieldsOf = (source: Source, fields: readonly (keyof Source & string)[]): WorkingInput[] =>
  fields.flatMap((field) => {
    const value = source[field]
    return typeof value === 'number' ? [given(ledger, source, field, value)] : []
  })

const fallOf = (source: Source, { season, drop_ft }: SeasonDrop): WorkingInput[] =>
  drop_ft > 0 ? [given(ledger, source, season === 'dry' || drop_ft === source.seasonalDrop_ft ? 'seasonalDrop_ft' : 'droughtDrop_ft', drop_ft)] : []

/** Water above the strainer. */
export function explainVolume(source: Source, water: SourceWater, drop: SeasonDrop): Working | undefined {
  if (water.usable_gal === undefined || water.volumeFrom === 'stream') return undefined
  const isEntered = water.volumeFrom === 'entered'
  return working(isEntered ? 'volume-entered' : 'volume-surface', 'usable_gal', water.usable_gal, isEntered ? '' : 'regional fire journal, the lens method', [
    ...fieldsOf(source, isEntered ? ['usable_gal', ...(drop.drop_ft > 0 ? ['surface_sqft' as const] : [])] : ['surface_sqft', 'usableDepth_ft']),
    ...fallOf(source, drop),
  ])
}

/** What runs in: entered, or a stream’s flow by its float. */
export function explainInflow(source: Source, water: SourceWater, drop: SeasonDrop): Working | undefined {
  if (water.inflow_gpm === undefined) return undefined
  if (source.inflow_gpm !== undefined) return working('inflow-entered', 'inflow_gpm', water.inflow_gpm, '', fieldsOf(source, ['inflow_gpm']))
  const depth_ft = (source.streamDepth_ft ?? 0) - drop.drop_ft
  return working('stream-float', 'inflow_gpm', water.inflow_gpm, 'float method, state sheet; factor by depth, USBR manual (common figure, not checked against the published text); a lower stream is slower, Manning', [
    ...fieldsOf(source, ['streamWidth_ft', 'streamDepth_ft', 'floatReach_ft', 'float_s']),
    ...(depth_ft > 0 ? [computed('floatFactor', floatFactor(depth_ft))] : []),
    ...fallOf(source, drop),
  ])
}

/** How long it lasts at a draw. */
export function explainLasts(source: Source, water: SourceWater, drop: SeasonDrop, draw_gpm: number, found: Drawdown): Working | undefined {
  const volume = explainVolume(source, water, drop)
  if (!volume || found.lasts_s === undefined) return undefined
  const inflow = explainInflow(source, water, drop)
  return working('source-lasts', 'lasts_s', found.lasts_s, 'definition', [
    worked('usable_gal', volume), computed('draw_gpm', draw_gpm, 'typed on this sheet'), ...(inflow ? [worked('inflow_gpm', inflow)] : []),
  ])
}

/** What a pressure hydrant gives at 20 psi. */
export function explainHydrant(source: Source, water: SourceWater): Working | undefined {
  if (water.hydrant_gpm === undefined) return undefined
  return working('hydrant-20', 'hydrant_gpm', water.hydrant_gpm, 'flow-test practice, NFPA 291 (common practice, not checked against the published text)', [
    ...fieldsOf(source, ['static_psi', 'residual_psi', 'test_gpm']), computed('kept_psi', HYDRANT_RESIDUAL_PSI),
  ])
}
