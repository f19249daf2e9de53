/** A symbol's middle on the screen, the size of the name under it, and how far that is moved sideways. */
export type NamedSpot = { x: number; y: number; width: number; height: number; isAlwaysShown: boolean; shift_px?: number }

/** Half the edge of a symbol, and how far below its middle the name begins. */
const SYMBOL_PX = 14
const NAME_TOP_PX = 17

export type Box = { left: number; top: number; right: number; bottom: number }

/** A symbol on the screen. */
export const symbolBox = ({ x, y }: Pick<NamedSpot, 'x' | 'y'>): Box => ({ left: x - SYMBOL_PX, right: x + SYMBOL_PX, top: y - SYMBOL_PX, bottom: y + SYMBOL_PX })

/** The name of a symbol on the screen. */
export const nameBox = ({ x, y, width, height, shift_px = 0 }: NamedSpot): Box => ({ left: x + shift_px - width / 2, right: x + shift_px + width / 2, top: y + NAME_TOP_PX, bottom: y + NAME_TOP_PX + height })

/**
 * Which names have no room: those that would lie on a name before them in the list, on the symbol of another, or
 * half under something that lies over the map.
 *
 * @param spots most important first
 * @param over  what lies over the map, its buttons say
 */
export function crowdedNames(spots: readonly NamedSpot[], over: readonly Box[] = []): boolean[] {
  const symbols = spots.map(symbolBox)
  const named: Box[] = [...over]
  return spots.map((spot, i) => {
    const box = nameBox(spot)
    const isCrowded = !spot.isAlwaysShown && (named.some((other) => meets(box, other)) || symbols.some((other, k) => k !== i && meets(box, other)))
    if (!isCrowded) named.push(box)
    return isCrowded
  })
}

/** Nearer to the edge of the map a name would touch it. */
const EDGE_PX = 4

/**
 * How far a name is moved sideways so that it is not cut off by the edge of the map.
 *
 * @param x_px     middle of its symbol, from the map's left edge
 * @param width_px of the name
 * @param map_px   width of the map
 * @returns 0 where it has room, or where its symbol is itself not on the map: then its name is not shown either
 */
export function nameShift_px(x_px: number, width_px: number, map_px: number): number {
  if (x_px < 0 || x_px > map_px || width_px > map_px) return 0
  return Math.max(0, EDGE_PX - (x_px - width_px / 2)) - Math.max(0, x_px + width_px / 2 - (map_px - EDGE_PX))
}

const meets = (a: Box, b: Box): boolean => a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top
