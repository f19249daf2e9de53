import { sheetKey } from '@/lib/book'
import { findHazardFlow_gpm } from '@/lib/supply'
import { formatAsked, formatPoint, formatQuantity, say } from '@/app/_text'
import '@/app/_text/areas/book'
import { facts } from '../page/block'
import { openSheet } from './frame'
import { widthOf, type BookKit, type MadeSheet } from './kit'
import { mapBlocks, type MapSetting } from './map-block'
import { cautions, section, tiles, warning, writeIns } from './parts'
import { minorPlaces } from './plan-map'

/** A target hazard that nobody has made a plan for: what it is, what it needs, which water lies about. */
export function hazardSheet(kit: BookKit, hazardId: string): MadeSheet {
  const { district, measure, system } = kit
  const hazard = district.hazards.find(({ id }) => id === hazardId)
  if (!hazard) throw new RangeError(`hazardId is ${hazardId}, must be a target hazard of the district`)
  const across = widthOf(kit.paper)
  const sheet = openSheet(kit, { what: say('book.sheet.hazard'), title: hazard.name, symbol: 'hazard' })
  const needed_gpm = findHazardFlow_gpm(hazard)
  sheet.add([warning(measure, across, say('book.hazard.no-plan'))])
  sheet.add(tiles(measure, across, [
    { label: say('book.fig.needed'), value: needed_gpm === undefined ? say('quantity.unknown') : formatAsked(needed_gpm, system), note: hazard.neededBy ? say(`choice.neededBy.${hazard.neededBy}`) : say('book.fig.needed.note'), isStrong: true },
    { label: say('book.hazard.floor'), value: hazard.length_ft === undefined || hazard.width_ft === undefined ? say('quantity.unknown') : say('book.hazard.floor.value', { length: formatQuantity(hazard.length_ft, 'ft', system), width: formatQuantity(hazard.width_ft, 'ft', system) }) },
    { label: say('book.hazard.exposures'), value: hazard.exposureCount === undefined ? say('quantity.unknown') : String(hazard.exposureCount) },
  ], 3))
  sheet.add(facts(measure, across, [
    [say('book.draft.place'), formatPoint(hazard.point)],
    [say('book.hazard.construction'), hazard.constructionType ? say(`choice.constructionType.${hazard.constructionType}`) : ''],
    [say('book.hazard.occupancy'), hazard.occupancyClass === 3 || hazard.occupancyClass === 4 || hazard.occupancyClass === 5 || hazard.occupancyClass === 6 || hazard.occupancyClass === 7 ? say(`choice.occupancyClass.${hazard.occupancyClass}`) : ''],
    [say('book.notes'), hazard.notes ?? ''],
  ], 9.2, 0.27))
  const setting: MapSetting = {
    places: [
      { kind: 'hazard', point: hazard.point, name: hazard.name },
      ...minorPlaces(district, system, ['draftSite', 'source', 'roadNote', 'station']),
    ],
    leastAcross_m: 3200,
  }
  if (sheet.left() < 290) sheet.turn()
  const down = Math.max(290, Math.min(380, sheet.left() - 210))
  sheet.add(mapBlocks(kit, across, { least: down, most: down }, setting))
  sheet.add(cautions(measure, across, ['bridges', 'traffic', 'banks']))
  sheet.add(section(measure, across, say('book.contacts'), writeIns(across, ['book.write.owner', 'book.write.key', 'book.write.utilities', 'book.write.dispatch'])))
  return { key: sheetKey({ kind: 'hazard', hazardId }), title: hazard.name, what: say('book.sheet.hazard'), symbol: 'hazard', pages: sheet.pages }
}
