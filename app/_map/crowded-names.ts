/** A symbol's middle on the screen, and the size of the name under it. */
export type NamedSpot = { x: number; y: number; width: number; height: number; isAlwaysShown: boolean }

/** Half the edge of a symbol, and how far below its middle the name begins. */
const SYMBOL_PX = 14
const NAME_TOP_PX = 17

type Box = { left: number; top: number; right: number; bottom: number }

/**
 * Which names have no room: those that would lie on a name before them in the list, or on
 * the symbol of another.
 *
 * @param spots most important first
 */
export function crowdedNames(spots: readonly NamedSpot[]): boolean[] {
  const symbols = spots.map(({ x, y }): Box => ({ left: x - SYMBOL_PX, right: x + SYMBOL_PX, top: y - SYMBOL_PX, bottom: y + SYMBOL_PX }))
  const named: Box[] = []
  return spots.map(({ x, y, width, height, isAlwaysShown }, i) => {
    const box = { left: x - width / 2, right: x + width / 2, top: y + NAME_TOP_PX, bottom: y + NAME_TOP_PX + height }
    const isCrowded = !isAlwaysShown && (named.some((other) => meets(box, other)) || symbols.some((other, k) => k !== i && meets(box, other)))
    if (!isCrowded) named.push(box)
    return isCrowded
  })
}

const meets = (a: Box, b: Box): boolean => a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top
