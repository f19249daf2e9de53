import type { District, DumpSite } from '../plan'
import { defaults } from '../supply'
import type { SketchTank } from './sketch/dump-sketch'

/** The tanks that stand at a dump site, first the one that is drafted from; `isAssumed` where nobody has named any. */
export function dumpTanks({ equipment }: Pick<District, 'equipment'>, site: DumpSite): { tanks: SketchTank[]; isAssumed: boolean } {
  if (site.nurseId !== undefined) return { tanks: [], isAssumed: false }
  const named = (site.portableTankIds ?? []).flatMap((id) => {
    const tank = equipment.find((item) => item.id === id)
    return tank?.kind === 'portableTank' ? [{ id: tank.id as string, capacity_gal: tank.capacity_gal, height_in: tank.height_in ?? defaults.portableTankHeight_in.value }] : []
  })
  if (named.length > 0) return { tanks: named, isAssumed: false }
  return {
    tanks: [{ capacity_gal: site.tankCapacity_gal ?? defaults.portableTank_gal.value, height_in: site.tankHeight_in ?? defaults.portableTankHeight_in.value }],
    isAssumed: site.tankCapacity_gal === undefined,
  }
}
