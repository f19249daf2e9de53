import type { Block } from './block'
import type { Page } from './page'

/** Where blocks go: the page, and what of it is free. */
export type Room = { page: Page; readonly left: number; readonly across: number; top: number; readonly bottom: number }

/**
 * Sets blocks one under the other, on further pages where they do not fit.
 *
 * @param room  changed: on return it is the last page, and what is left of it
 * @param more  begins a page, with its head
 */
export function flow(blocks: readonly Block[], room: Room, more: () => Room): Room {
  let now = room
  blocks.forEach((block, i) => {
    let needed = block.down
    for (let next = i; blocks[next]?.keepsNext && next + 1 < blocks.length; next++) needed += blocks[next + 1]?.down ?? 0
    if (now.top + needed > now.bottom) {
      now = more()
      if (block.head) {
        block.head.draw(now.page, now.left, now.top)
        now.top += block.head.down
      }
    }
    block.draw(now.page, now.left, now.top)
    now.top += block.down
  })
  return now
}
