import { sheetKey, type SheetRef } from '@/lib/book'
import { siteKinds, type SiteKind } from '@/app/_look/site-shapes'
import { say } from '@/app/_text'
import '@/app/_text/areas/book'
import type { MapPlace } from '../draw/draw-map'
import { drawSymbol } from '../draw/symbol'
import { facts, heading, list, paragraph, space, type Block } from '../page/block'
import { LEADING, wrap } from '../page/measure'
import { dataLine, dayWords, openSheet } from './frame'
import { widthOf, type BookKit, type MadeSheet } from './kit'
import { mapBlocks } from './map-block'
import { warning, writeIns } from './parts'
import { minorPlaces } from './plan-map'

const COVER_KEY = 'front cover'
const CONTENTS_KEY = 'front contents'
const INDEX_KEY = 'front index'

/** The cover: whose book it is, how old, what its signs mean, and who decides. */
export function coverSheet(kit: BookKit, sheets: readonly MadeSheet[]): MadeSheet {
  const { measure, district, day } = kit
  const across = widthOf(kit.paper)
  const what = say('book.cover')
  const sheet = openSheet(kit, { what: say('shell.name'), title: what })
  const count = (kind: string) => sheets.filter(({ key }) => key.startsWith(`${kind} `)).length
  sheet.add([
    space(70),
    ...paragraph(measure, across, district.name, { size: 34, weight: 'bold' }, 14),
    ...paragraph(measure, across, say('book.cover.holds', { plans: count('plan'), sites: count('fill') + count('dump'), drafts: count('draft'), hazards: count('hazard') }), { size: 12 }, 20),
    warning(measure, across, say('caution.planning-aid')), space(8),
    ...facts(measure, across, [
      [say('book.evidence.printed'), dayWords(day)],
      ...([['roads', district.roads], ['map', district.map], ['terrain', district.terrain]] as const).flatMap(([key, set]): [string, string][] => (set ? [[say(`book.data.${key}`), say('book.data.value', { name: set.name, day: dayWords(set.dataDate ?? set.importedOn), hash: set.hash.slice(0, 8) })]] : [])),
      [say('book.data.credit'), [...new Set([district.roads, district.map, district.terrain].flatMap((set) => (set ? [set.attribution] : [])))].join('; ')],
    ], 9.5, 0.27),
    heading(measure, across, say('book.signs')),
    ...signRows(kit, across),
    ...paragraph(measure, across, say('book.cover.grey'), { size: 9 }, 6),
    heading(measure, across, say('book.cover.issue')),
    ...writeIns(across, ['book.write.issued', 'book.write.vehicle', 'book.write.checked', 'book.write.replaces']),
  ])
  return { key: COVER_KEY, title: what, what, symbol: 'station', pages: sheet.pages }
}

/** Symbols with their names, three in a row. */
function signRows({ measure }: BookKit, across: number): Block[] {
  const kinds = siteKinds.filter((kind): kind is Exclude<SiteKind, 'pumper' | 'tender'> => kind !== 'pumper' && kind !== 'tender')
  const rows = Array.from({ length: Math.ceil(kinds.length / 3) }, (_, i) => kinds.slice(3 * i, 3 * i + 3))
  return rows.map((row): Block => ({
    down: 22,
    draw: (page, x, y) => {
      row.forEach((kind, i) => {
        const left = x + (i * across) / 3
        drawSymbol(page, kind, left + 9, y + 11, 17)
        wrap(measure, say(`book.place.${kind}`), across / 3 - 28, 9.5, 'regular').slice(0, 1).forEach((line) => { page.line(line, left + 24, y + 5, { size: 9.5 }) })
      })
    },
  }))
}

/**
 * The contents, each line leading to its sheet.
 *
 * @param pageOf number of a sheet's first page
 */
export function contentsSheet(kit: BookKit, sheets: readonly MadeSheet[], pageOf: (key: string) => number): MadeSheet {
  const { measure } = kit
  const across = widthOf(kit.paper)
  const what = say('book.contents')
  const sheet = openSheet(kit, { what: say('book.cover'), title: what })
  const row = ({ key, title, what: kind, symbol }: MadeSheet, isInner: boolean): Block => {
    const indent = isInner ? 24 : 0
    const size = isInner ? 9.5 : 10.5
    const kindAcross = 92, pageAcross = 34
    const lines = wrap(measure, title, across - indent - 20 - kindAcross - pageAcross, size, isInner ? 'regular' : 'bold')
    const down = Math.max(17, lines.length * size * LEADING + 5)
    return {
      down,
      draw: (page, x, y) => {
        drawSymbol(page, symbol, x + indent + 7, y + 8, 12)
        lines.forEach((line, i) => { page.line(line, x + indent + 20, y + 2 + i * size * LEADING, { size, weight: isInner ? 'regular' : 'bold' }) })
        page.line(kind, x + across - pageAcross - kindAcross, y + 3, { size: 8, ink: 'quiet' })
        page.line(String(pageOf(key)), x + across, y + 2, { size, weight: 'bold' }, 'right')
        page.rule(x + indent, x + across, y + down, 0.4, 'hair')
        page.link(x, y, across, down, key)
      },
    }
  }
  const part = (title: string, own: readonly MadeSheet[]): Block[] => (own.length === 0 ? [] : [heading(measure, across, title), ...own.map((one) => row(one, one.symbol === 'fillSite' || one.symbol === 'dumpSite'))])
  const kindOf = ({ key }: MadeSheet) => key.split(' ')[0]
  sheet.add([
    ...part(say('book.contents.overview'), sheets.filter((one) => kindOf(one) === 'front')),
    ...part(say('book.contents.plans'), sheets.filter((one) => kindOf(one) === 'plan' || kindOf(one) === 'fill' || kindOf(one) === 'dump')),
    ...part(say('book.contents.drafts'), sheets.filter((one) => kindOf(one) === 'draft')),
    ...part(say('book.contents.hazards'), sheets.filter((one) => kindOf(one) === 'hazard')),
  ])
  return { key: CONTENTS_KEY, title: what, what, symbol: 'station', pages: sheet.pages }
}

/** The district at a glance: every sheet's place with the number of its page in the sign. */
export function indexMapSheet(kit: BookKit, refs: readonly SheetRef[], pageOf: (key: string) => number): MadeSheet {
  const { district, measure, system } = kit
  const across = widthOf(kit.paper)
  const what = say('book.index')
  const sheet = openSheet(kit, { what: say('book.cover'), title: what })
  const places: MapPlace[] = [...refs.flatMap((ref) => placeOf(kit, ref, String(pageOf(sheetKey(ref))))),
    ...minorPlaces(district, system, ['roadNote', 'station'])]
  const setting = { places, leastAcross_m: 1500, symbolSize: 21 }
  sheet.add(paragraph(measure, across, say('book.index.text'), { size: 9.5 }))
  if (places.some(({ isMinor }) => !isMinor)) {
    sheet.add(mapBlocks(kit, across, { least: sheet.left() - 6, most: sheet.left() - 6 }, setting))
  } else sheet.add(list(measure, across, [{ text: dataLine(kit) }]))
  return { key: INDEX_KEY, title: what, what, symbol: 'station', pages: sheet.pages }
}

function placeOf({ district, answered }: BookKit, ref: SheetRef, letter: string): MapPlace[] {
  const make = (kind: SiteKind, at: { readonly point?: MapPlace['point'] | undefined; readonly name: string } | undefined): MapPlace[] => (at?.point ? [{ kind, point: at.point, name: at.name, letter }] : [])
  switch (ref.kind) {
    case 'draft': return make('draftSite', district.draftSites.find(({ id }) => id === ref.draftSiteId))
    case 'hazard': return make('hazard', district.hazards.find(({ id }) => id === ref.hazardId))
    case 'plan': {
      const plan = answered.find(({ bundle }) => bundle.plan.id === ref.planId)?.bundle.plan
      const hazard = district.hazards.find(({ id }) => id === plan?.hazardId)
      return plan ? make('fireGround', { point: plan.fireGround ?? hazard?.point, name: plan.name }) : []
    }
    // Sites of a plan lie about its fire ground; their sheets stand behind the plan's.
    case 'fill': case 'dump': return []
  }
}
