import type { DraftSheet } from '@/lib/supply'
import { formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/draft'

type Sheet = Pick<DraftSheet, 'drop' | 'source'>

/** The season asked for is not the one whose fall is counted, or no fall is recorded at all. */
export const isFallUnknown = ({ drop }: Sheet): boolean => drop.issues.some(({ code }) => code === 'season-drop-missing' || code === 'source-fall-unknown')

/** What the water level of a sheet is, and what of it is not recorded. */
export function seasonText({ drop, source }: Sheet, system: UnitSystem): string {
  const { season, counted, drop_ft } = drop
  const fall = formatQuantity(drop_ft, 'ft', system)
  if (!source) return say('draft.season.no-source')
  if (isFallUnknown({ drop, source })) return say('draft.season.unknown', { season: season === 'drought' ? 'drought' : 'dry', counted, fall })
  if (source.kind === 'pressureHydrant' || (source.kind === 'cistern' && drop_ft === 0)) return say('draft.season.none')
  return drop_ft > 0 ? say('draft.season.falls', { fall }) : say('draft.season.usual')
}
