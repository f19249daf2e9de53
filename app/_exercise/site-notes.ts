import type { ExerciseView } from '@/lib/exercise'
import type { MapSite } from '../_map'
import { formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/exercise'

/** Less than this until a tank is empty asks for attention. */
const SOON_S = 120

/** Sites with what stands in their tanks, what they draw, and who waits there. */
export function withNotes(sites: readonly MapSite[], view: Pick<ExerciseView, 'tanks' | 'fills'>, system: UnitSystem): MapSite[] {
  const waits = (count: number) => (count === 0 ? [] : [say('exercise.waiting', { count })])
  return sites.map((site) => {
    const tank = view.tanks.find(({ dumpSiteId }) => dumpSiteId === site.id)
    const fill = view.fills.find(({ fillSiteId }) => fillSiteId === site.id)
    if (tank) return { ...site, note: [formatQuantity(tank.level_gal, 'gal', system, { style: 'headline' }), ...waits(tank.waitingCount)].join(' · '), isMarked: tank.lasts_s !== undefined && tank.lasts_s < SOON_S }
    if (fill) return { ...site, note: [...(fill.draw_gpm > 0 ? [say('exercise.filling', { flow: formatQuantity(fill.draw_gpm, 'gpm', system) })] : []), ...waits(fill.waitingCount)].join(' · ') }
    return site
  })
}
