import { groundOf } from '@/lib/book'
import { findBounds, isInside } from '@/lib/geo'
import { say } from '@/app/_text'
import '@/app/_text/areas/book'
import { drawMap, mapView, type MapPlace } from '../draw/draw-map'
import { drawWaySample, type MapWay, type WayLook } from '../draw/draw-ways'
import { drawSymbol } from '../draw/symbol'
import { space, type Block } from '../page/block'
import { LEADING, wrap } from '../page/measure'
import type { Page } from '../page/page'
import type { BookKit } from './kit'

export type MapSetting = { readonly places: readonly MapPlace[]; readonly ways?: readonly MapWay[]; readonly leastAcross_m?: number; /** Only the places are kept in sight, ways may run out of it. */ readonly isClose?: boolean; readonly symbolSize?: number }

/** What lies between the lowest and the highest a map may be: as high as its places need, so that paper is not spent on empty ground. */
function downOf(across: number, least: number, most: number, { places, ways = [], isClose = false }: MapSetting): number {
  const reach = [...places.filter(({ isMinor }) => !isMinor).map(({ point }) => point), ...(isClose ? [] : ways.filter(({ look }) => look !== 'approach').flatMap(({ path }) => path))]
  const bounds = findBounds(reach)
  if (!bounds) return least
  const wide = (bounds.east - bounds.west) * Math.cos((bounds.north * Math.PI) / 180)
  const needed = wide > 0 ? ((bounds.north - bounds.south) / wide) * (across - 2 * SIDE) + 2 * SIDE : most
  return Math.max(least, Math.min(most, needed))
}

/** A map with its key under it: as high as its places need, within bounds that hold for both together. */
export function mapBlocks(kit: BookKit, across: number, { least, most }: { readonly least: number; readonly most: number }, setting: MapSetting): Block[] {
  const { measure, map, system } = kit
  const whole = mapKey(kit, across, setting)
  const down = downOf(across, Math.max(80, least - whole.down - 4), Math.max(80, most - whole.down - 4), setting)
  const view = mapView({ ...setting, box: { left: 0, top: 0, right: across, bottom: down } })
  const ground = groundOf(view)
  const key = mapKey(kit, across, { places: setting.places.filter(({ isMinor, point }) => !isMinor || isInside(ground, point)), ...(setting.ways && { ways: setting.ways.filter(({ path }) => path.some((point) => isInside(ground, point))) }) })
  return [
    { down: down + 4, keepsNext: true, draw: (page, x, y) => { drawMap(page, measure, { map, system, box: { left: x, top: y, right: x + across, bottom: y + down }, ...setting }) } },
    key, space(4),
  ]
}

const wayOrder: readonly WayLook[] = ['loaded', 'empty', 'approach', 'lay']

const CREDIT = 6.8
/** Left free about the outermost places, for their names. */
const SIDE = 60

/** What the signs on a map mean, and whose data it is drawn from. */
function mapKey({ measure, district, map }: BookKit, across: number, { places, ways = [] }: MapSetting): Block {
  const size = 7.8
  type Item = { readonly text: string; readonly draw: (page: Page, x: number, y: number) => void; readonly room: number }
  const looks = wayOrder.filter((look) => ways.some((way) => way.look === look))
  const kinds = [...new Set(places.map(({ kind }) => kind))]
  const items: Item[] = [
    ...looks.map((look): Item => ({ text: say(`book.way.${look}`), room: 30, draw: (page, x, y) => { drawWaySample(page, look, x, y, 26) } })),
    ...kinds.map((kind): Item => ({ text: say(`book.place.${kind}`), room: 14, draw: (page, x, y) => { drawSymbol(page, kind, x + 5.5, y, 11) } })),
  ]
  const rows: { item: Item; at: number }[][] = [[]]
  let at = 0
  for (const item of items) {
    const wide = item.room + measure.across(measure.clean(item.text), size, 'regular') + 12
    if (at + wide > across && at > 0) {
      rows.push([])
      at = 0
    }
    rows.at(-1)?.push({ item, at })
    at += wide
  }
  const credit = map ? say('book.map.credit', { attribution: district.map?.attribution ?? '' }) : say('book.map.none')
  const creditLines = wrap(measure, credit, across, CREDIT, 'regular').length
  const down = rows.length * 13 + creditLines * CREDIT * LEADING + 4
  return {
    down,
    draw: (page, x, y) => {
      rows.forEach((row, i) => {
        for (const { item, at: left } of row) {
          item.draw(page, x + left, y + 9 + i * 13)
          page.line(item.text, x + left + item.room, y + 9 + i * 13 - size * 0.66, { size })
        }
      })
      page.text(credit, x, y + rows.length * 13 + 2, across, { size: CREDIT, ink: 'quiet' })
    },
  }
}
