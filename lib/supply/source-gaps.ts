import type { Source } from '../plan'
import { sourceWater } from './source'

/** What nobody has recorded of a source, though an answer stands on it. */
export type SourceGap = 'volume' | 'flow' | 'test' | 'dryFall' | 'droughtFall'

/**
 * Things to find out of a source: how much water there is, and how far it falls.
 *
 * @returns in the order of what they may cost; none for a source that says all
 */
export function sourceGaps(source: Source): readonly SourceGap[] {
  if (source.kind === 'pressureHydrant') return sourceWater(source).hydrant_gpm === undefined ? ['test'] : []
  const codes = sourceWater(source).issues.map(({ code }) => code)
  const hasSeasons = source.kind !== 'cistern'
  return [
    ...(codes.includes('source-volume-unknown') ? ['volume' as const] : []),
    ...(codes.includes('source-flow-unknown') ? ['flow' as const] : []),
    ...(hasSeasons && source.seasonalDrop_ft === undefined ? ['dryFall' as const] : []),
    ...(hasSeasons && source.droughtDrop_ft === undefined ? ['droughtFall' as const] : []),
  ]
}
